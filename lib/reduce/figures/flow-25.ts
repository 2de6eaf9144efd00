import { flowAt } from './flow-at.ts'

export const flow25 = flowAt(25)
