/** The next test in the same house: a new test with the set-up of the one before it, and nothing of what was read. */
import { isBlank } from './edits.ts'
import { emptyPoint, emptyTest, nextRole } from './empty.ts'
import type { Job, Test } from './schema.ts'

/**
 * An empty test of today under `role`, set up as `test` is. The air in and outside the house stays too, as it was typed:
 * minutes lie between the two, and flows of which only some are corrected for the air cannot be taken together.
 */
function onceMore(test: Test, role: string): Test {
  const { id, date } = emptyTest(role, test.sheet.subject, test.units)
  const { fieldCheck: _, servedArea: __, ...sheet } = test.sheet
  const { zones: ___, ...rest } = test
  return {
    ...rest,
    id,
    date,
    role,
    notes: '',
    instrumentFigure: '',
    sheet: { ...sheet, baselineBefore: '', baselineAfter: '', points: [emptyPoint()], airHandlerFlow: '' },
  }
}

/** The test of an enclosure once more, with the air drawn the other way: under the same role, so that both have a mean. */
export function otherDirection(test: Test): Test {
  const again = onceMore(test, test.role)
  const direction = test.sheet.direction === 'depressurize' ? 'pressurize' : 'depressurize'
  return { ...again, sheet: { ...again.sheet, direction } }
}

/** The next system of ducts of the house. */
export const nextSystem = (job: Pick<Job, 'tests'>, test: Test): Test => onceMore(test, nextRole(job, 'ducts'))

/**
 * What a test becomes when it is found to be of something else. A direction and a role that were only proposed are
 * proposed anew: ducts are blown into, and their systems are counted. What a person chose, or has read, stays.
 */
export function asSubject(job: Pick<Job, 'tests'>, test: Test, subject: Test['sheet']['subject']): Test {
  const others = { tests: job.tests.filter(({ id }) => id !== test.id) }
  const read = test.sheet.points.some((point) => !isBlank(point))
  const usual = emptyTest('', subject, test.units).sheet.direction
  const proposed = /^(before|after|final( \d+)?|duct system \d+)$/.test(test.role.trim())
  return {
    ...test,
    role: proposed ? nextRole(others, subject) : test.role,
    sheet: { ...test.sheet, subject, direction: read ? test.sheet.direction : usual },
  }
}
