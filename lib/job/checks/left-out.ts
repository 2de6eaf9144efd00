/** Readings that were typed and are not reduced. */
import { say } from '../../words/say.ts'
import type { CheckResult } from '../../reduce/report.ts'
import { pointsLeftOut } from '../left-out.ts'
import type { Test } from '../schema.ts'

/** Names every point that was left out, and why. Source: common practice, no source. */
export function leftOut(test: Test): CheckResult[] {
  const gone = pointsLeftOut(test)
  if (gone.length === 0) return []
  const named = gone.map(({ row, reason }) => say`point ${row + 1} (“${reason}”)`).join(', ')
  return [
    {
      id: 'left-out',
      outcome: 'doubtful',
      text: say`Left out of every figure: ${named}. The readings stay in the job and the report; whoever reviews the test decides whether the reason holds.`,
      found: say`${gone.length} left out`,
      expected: say`every point reduced`,
    },
  ]
}
