/** The next house of the day: a new job with the set-up of the last one, and nothing of what was typed in it. */
import { emptyJob, emptyTest } from './empty.ts'
import type { Job, Test, TypedSheet } from './schema.ts'

/** What of a sheet is set-up: none of it was read in the house. */
const setUp = [
  'procedure',
  'direction',
  'reading',
  'flowBasis',
  'corrections',
  'exponent',
  'exponentUncertainty',
  'pressurePercent',
  'pressureFloor',
  'flowPercent',
  'ductLeakage',
  'device',
  'fans',
] as const satisfies readonly (keyof TypedSheet)[]

/** An empty test of today, set up as `test` is, under the same role unless another is given. */
export function sameSetUp(test: Test, role: string = test.role): Test {
  const { sheet, units, stage, limit, ownLimit, ownLimitFigure, ownLimitOrigin, ownLimitTerms, onePointFactor } = test
  const blank = emptyTest(role, sheet.subject, units)
  const kept = Object.fromEntries(setUp.flatMap((key) => (sheet[key] === undefined ? [] : [[key, sheet[key]]])))
  return {
    ...blank,
    sheet: { ...blank.sheet, ...kept },
    stage,
    limit,
    ownLimit,
    onePointFactor,
    ...(ownLimitFigure !== undefined && { ownLimitFigure }),
    ...(ownLimitOrigin !== undefined && { ownLimitOrigin }),
    ...(ownLimitTerms !== undefined && { ownLimitTerms }),
  }
}

/**
 * A new job with the units, the tester and the tests of `job`, each set up as it was and dated today: no reading, address,
 * number, size or note is kept. Tests that were made on a later day than the first are left out: they will be again. Of
 * the building only the climate zone stays, which limits ask for.
 */
export function nextHouse(job: Job): Job {
  const fresh = emptyJob(job.units, job.tester)
  const [first] = job.tests
  return {
    ...fresh,
    building: { ...fresh.building, climateZone: job.building.climateZone },
    tests: job.tests.filter(({ date }) => date === first?.date).map((test) => sameSetUp(test)),
  }
}
