import { flowAt } from './flow-at.ts'

export const flow50 = flowAt(50, { group: 'what forms ask' })
