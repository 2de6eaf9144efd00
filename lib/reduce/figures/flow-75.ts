import { flowAt } from './flow-at.ts'

export const flow75 = flowAt(75)
