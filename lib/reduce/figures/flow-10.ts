import { flowAt } from './flow-at.ts'

export const flow10 = flowAt(10)
