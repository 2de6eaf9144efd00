/** What an entry holds of the tests behind its texts: figures, limit, verdict, and the report written out. */
import type { Basis, HeldTest } from '../book/basis-schema.ts'
import type { Device, Job } from '../job/schema.ts'
import { knownTests, type KnownTest } from '../job/together.ts'
import { judge } from '../job/house-limit.ts'
import type { Verdict } from '../limits/index.ts'
import { language } from '../words/say.ts'
import { reportOf } from './content.ts'
import { pageVersion, writePage } from './write-page.ts'

/** Plain data: what is not there has no key, and what is no number is nothing. */
const plain = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T

/**
 * Computes and writes out all tests of a job.
 * @param engine its version
 */
export function basisOf(job: Job, devices: readonly Device[], engine: string): Basis {
  const known = knownTests(job, [...devices])
  return {
    version: pageVersion,
    engine,
    language: language(),
    devices: [...devices],
    tests: known.map((one) => heldTest(job, one, devices, known)),
  }
}

function heldTest(job: Job, one: KnownTest, devices: readonly Device[], known: readonly KnownTest[]): HeldTest {
  const { test, key, reduced } = one
  const { sheet, report } = reduced
  const { limit, verdict, withheld } = judge(job, test, report?.figures)
  return plain({
    test: test.id,
    key,
    ...(sheet && { sheet: { ...sheet } }),
    figures: report?.figures ?? {},
    ...(report?.fit && { fit: { ...report.fit } }),
    checks: report?.checks ?? [],
    ...((limit ?? withheld) && { limit: limit ?? withheld?.limit }),
    ...(verdict && { verdict: heldVerdict(verdict) }),
    ...(withheld && {
      verdict: { outcome: 'withheld' as const, sentences: [{ code: 'withheld', text: withheld.withheld }] },
    }),
    page: writePage(reportOf(job, test, devices, undefined, known)),
  })
}

function heldVerdict(verdict: Verdict): NonNullable<HeldTest['verdict']> {
  const { limit: _, meets, ...rest } = verdict
  return { ...rest, outcome: meets ? 'meets' : 'does not meet' }
}
