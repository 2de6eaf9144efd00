/** A test after the work against the one before it. */
import { beforeAfter as compare, type Tested } from '../../reduce/before-after.ts'
import type { CheckResult } from '../../reduce/report.ts'
import type { Test } from '../schema.ts'
import { isDay } from './calibration.ts'
import { say } from '../../words/say.ts'

/** The test before the work and what it came to. */
export type Earlier = Tested & { test: Test }

/** Source: common practice, no source. */
export function beforeAfter(after: Earlier, before: Earlier | undefined): CheckResult[] {
  const result = before && compare(before, after)
  if (!result) return []
  const id = 'before-after'
  const [first, last] = [before.test.date.trim(), after.test.date.trim()]
  if (isDay(first) && isDay(last) && last < first) {
    const text = say`This test after the work is dated earlier than the one before it. Check both dates and roles.`
    return [
      { id, outcome: 'doubtful', text, found: say`${first} before, ${last} after`, expected: say`${first} or later` },
    ]
  }
  return [{ id, ...result }]
}
