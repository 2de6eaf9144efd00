/** Which role a test may bear. */
import type { Job, Test, TypedSheet } from '../../job/schema.ts'
import { say } from '../../words/say.ts'

const sameRole = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase()

/** The direction of a new test with this role: the one that an enclosure was not tested in yet under the same role. */
export function directionFor(job: Job, role: string, { sheet }: Test): TypedSheet['direction'] {
  const same = job.tests.find((test) => sameRole(test.role, role))
  if (sheet.subject !== 'enclosure' || same?.sheet.subject !== 'enclosure') return sheet.direction
  return same.sheet.direction === 'depressurize' ? 'pressurize' : 'depressurize'
}

/** Why a role cannot be used for a test, or an empty string. One role may stand for both directions of an enclosure. */
export function roleProblem(
  job: Job,
  id: string,
  role: string,
  sheet: Pick<TypedSheet, 'subject' | 'direction'>,
): string {
  if (role.trim() === '') return say`Give the test a role, for example before or after.`
  const same = job.tests.filter((test) => test.id !== id && sameRole(test.role, role))
  const other = same[0]?.sheet
  const both = same.length === 1 && other?.subject === 'enclosure' && sheet.subject === 'enclosure'
  if (both && other.direction !== sheet.direction) return ''
  return other ? say`This job already has a test “${role.trim()}”. Give this one another role.` : ''
}
