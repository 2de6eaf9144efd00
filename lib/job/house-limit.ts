/** A limit that a code sets over the whole house is met by all its duct systems together, never by one of them. */
import { limitOf, type TestVerdict, verdictOf } from './verdict.ts'
import type { Job, Test } from './schema.ts'
import { roleWords } from '../words/names.ts'
import { say } from '../words/say.ts'

type Figures = Parameters<typeof verdictOf>[2]

/** Figures whose limits are written for a house. The share of an air handler's flow is a matter of each system. */
const ofHouse = new Set(['duct-flow-25', 'duct-flow-25-per-floor-area', 'duct-qn'])

/** Whether a test is of one system of ducts, by its role. */
export const isSystem = ({ role, sheet }: Test): boolean =>
  sheet.subject === 'ducts' && /^duct system \d/i.test(role.trim())

/** What systems have in common that can be added up: the same leakage, at the same stage. */
export const kindOf = ({ sheet, stage }: Test): string => `${sheet.ductLeakage} ${stage}`

/** The systems that a test is added up with, itself among them; none while it is alone. */
export function systemsWith(tests: readonly Test[], test: Test): Test[] {
  const same = tests.filter((one) => isSystem(one) && kindOf(one) === kindOf(test))
  return same.length > 1 && same.some(({ id }) => id === test.id) ? same : []
}

const unread = ({ sheet }: Test): boolean =>
  sheet.points.every((point) => point.pressure.trim() === '' || (point.flow + point.devicePressure).trim() === '')

/** {@link verdictOf} a test of a job. Where the limit is for the house and the test is of one system of several: none, but why. */
export function judge(job: Pick<Job, 'building' | 'units' | 'tests'>, test: Test, figures: Figures): TestVerdict {
  const found = verdictOf(job, test, figures)
  const { limit } = found
  if (!limit || !found.verdict || !ofHouse.has(limit.figure)) return found
  const systems = systemsWith(job.tests, test)
  if (systems.length === 0) return found
  const waits = systems.filter(unread).map(({ role }) => roleWords(role.trim()))
  const limits = new Set(systems.map((one) => JSON.stringify(limitOf(one).limit)))
  const withheld = [
    say`This limit is for the whole house: its verdict is on the sum of all duct systems, not on one of them.`,
    waits.length > 0 && say`Not read yet: ${waits.join(', ')}.`,
    limits.size > 1 && say`Choose the same limit for all systems.`,
  ]
  return { withheld: { limit, withheld: withheld.filter(Boolean).join(' ') }, problems: found.problems }
}
