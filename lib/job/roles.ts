/** The roles of the tests of a job. */
import type { Test } from './schema.ts'

/** Roles as keys: as typed, numbered where one is used twice. */
export function roleKeys(tests: Test[]): Map<Test, string> {
  const used = new Set<string>()
  const keys = new Map<Test, string>()
  for (const [at, test] of tests.entries()) {
    const role = test.role.trim() === '' ? `test ${at + 1}` : test.role.trim()
    let key = role
    for (let number = 2; used.has(key); number++) key = `${role} (${number})`
    used.add(key)
    keys.set(test, key)
  }
  return keys
}
