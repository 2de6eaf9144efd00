import { flowAt } from './flow-at.ts'

export const flow4 = flowAt(4)
