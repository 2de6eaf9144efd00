/** Whether a test was made in the other direction too. */
import type { CheckResult } from '../../reduce/report.ts'
import type { Test } from '../schema.ts'
import { say } from '../../words/say.ts'

const called = ({ role }: Test) => role.trim().toLowerCase()

/** The same test in the other direction: a test of the house with the same role and readings of its own. */
const isOther = (test: Test, other: Test): boolean =>
  other.id !== test.id &&
  other.sheet.subject === 'enclosure' &&
  other.sheet.direction !== test.sheet.direction &&
  called(other) === called(test) &&
  other.sheet.points.some(({ pressure }) => pressure.trim() !== '')

/**
 * Takes the place of the sheet's own check of this id. Source: ASTM E779 (from memory).
 *
 * @param tests of the job
 */
export function bothDirections(test: Test, tests: readonly Test[]): CheckResult[] {
  if (test.sheet.procedure !== 'astm-e779') return []
  const id = 'both-directions'
  const expected = say`both directions`
  if (tests.some((other) => isOther(test, other)))
    return [{ id, outcome: 'good', text: say`The house was tested in both directions.`, found: expected, expected }]
  const found = say`one direction`
  if (test.notes.trim() === '') {
    const text = say`One direction only; ASTM E779 asks for both, or for the reason in the report. Add a test of the other direction with the same role, or say in the notes why not.`
    return [{ id, outcome: 'doubtful', text, found, expected }]
  }
  const text = say`One direction only; ASTM E779 asks for both, or for the reason in the report. Check that the notes say why.`
  return [{ id, outcome: 'not checked', text, found, expected }]
}
