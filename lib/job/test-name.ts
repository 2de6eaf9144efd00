/** What a test is called in a list of the tests of its job. */
import { roleWords } from '../words/names.ts'
import { say, shown } from '../words/say.ts'
import type { Test } from './schema.ts'

/** Whether two tests of a job bear the same role. */
export const alike = (one: Test, other: Test): boolean =>
  one.role.trim().toLowerCase() === other.role.trim().toLowerCase() && one.sheet.subject === other.sheet.subject

/** Its role; with the direction where another test of the house bears the same role. */
export function testName(tests: readonly Test[], test: Test): string {
  const role = roleWords(test.role.trim()) || say`no role`
  const twice = test.sheet.subject === 'enclosure' && tests.some((one) => one.id !== test.id && alike(one, test))
  return twice ? `${role}, ${shown(test.sheet.direction)}` : role
}
