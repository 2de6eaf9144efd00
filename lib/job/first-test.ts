/** The first test of a new job, set up as the person usually tests. */
import { publishedLimit } from '../limits/index.ts'
import { keptLimitsFor, takeLimit } from './kept-limit.ts'
import type { Device, Job, KeptLimit, Test, TypedSheet } from './schema.ts'

/** What is set for a first test; what is absent or empty is as for any new test. */
export interface FirstTest {
  procedure?: TypedSheet['procedure'] | undefined
  stage?: Test['stage'] | undefined
  /** The id of a published limit, or that of a kept one behind `kept:`. */
  limit?: string | undefined
  device?: string | undefined
  pressurePercent?: string | undefined
  flowPercent?: string | undefined
}

const ofKept = 'kept:'

/**
 * A test of a new job with what is set for it. A limit or a device that is gone, or a limit that is not for such a test,
 * is left out: it would have to be taken away again in every house.
 */
export function firstTest(
  job: Pick<Job, 'building' | 'units'>,
  test: Test,
  set: FirstTest,
  { limits, devices }: { limits: readonly KeptLimit[]; devices: readonly Device[] },
): Test {
  const { procedure = test.sheet.procedure, stage = test.stage, limit = '', device = '' } = set
  const { pressurePercent = '', flowPercent = '' } = set
  const known = devices.some(({ id }) => id === device) ? device : ''
  const made = { ...test, stage, sheet: { ...test.sheet, procedure, pressurePercent, flowPercent, device: known } }
  if (!limit.startsWith(ofKept)) {
    const published = publishedLimit(limit)
    return published?.subject === test.sheet.subject ? { ...made, limit } : made
  }
  const kept = keptLimitsFor(job, made, limits).find(({ id }) => ofKept + id === limit)
  return kept ? { ...made, ...takeLimit(kept) } : made
}
