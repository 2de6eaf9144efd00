/** The factor of 1.1 that some programs ask for. */
import type { Test } from './schema.ts'

/** Whether a test has a result that the factor is for: an enclosure at one point. A switch left on elsewhere does nothing. */
export const takesOnePointFactor = ({ sheet }: Pick<Test, 'sheet'>): boolean =>
  sheet.procedure === 'one-point' && sheet.subject === 'enclosure'
