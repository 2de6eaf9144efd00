/** An own limit can be set on each figure that forms ask for, in the unit that the report gives it in. */
import { describe, expect, test } from 'vitest'
import { ownLimitFigures, ownLimitUnit } from '../../lib/job/own-limit.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import type { Test, TypedUnits } from '../../lib/job/schema.ts'
import { verdictOf } from '../../lib/job/verdict.ts'
import { decimalsOf } from '../../lib/reduce/figures/index.ts'
import { fakeDevices, fakeJob, fakeTest } from './fake.ts'

const systems: TypedUnits[] = [
  { flow: 'cfm', temperature: 'degF', length: 'ft' },
  { flow: 'm3/h', temperature: 'degC', length: 'm' },
  { flow: 'L/s', temperature: 'degC', length: 'm' },
]

function testOf(units: TypedUnits, subject: 'enclosure' | 'ducts', figure: string, limit = '1'): Test {
  const typed = { subject, device: '', indoor: '', outdoor: '', airHandlerFlow: subject === 'ducts' ? '1000' : '' }
  return fakeTest(typed, { units, limit: 'own', ownLimitFigure: figure, ownLimit: limit })
}

const jobOf = (units: TypedUnits) => ({ ...fakeJob({ enclosureAreaWithoutFloor: '3000' }), units })

describe.each(systems)('$flow and $length', (units) => {
  test.each([
    ...ownLimitFigures.enclosure.map((figure) => ['enclosure', figure] as const),
    ...ownLimitFigures.ducts.map((figure) => ['ducts', figure] as const),
  ])('%s: %s', (subject, figure) => {
    const job = jobOf(units)
    const one = testOf(units, subject, figure)
    const { report } = reduceTest(job, one, fakeDevices())
    const found = report!.figures[figure]!
    expect(ownLimitUnit(one)).toBe(found.unit)
    expect(decimalsOf(figure, found.unit)).toBeGreaterThanOrEqual(0)
    const judged = (limit: number) => verdictOf(job, testOf(units, subject, figure, String(limit)), report!.figures)
    expect(judged(found.value * 1.01).verdict?.meets).toBe(true)
    expect(judged(found.value * 0.99).verdict?.meets).toBe(false)
  })
})

test('a figure that waits for a size asks for it', () => {
  for (const [figure, path] of [
    ['specific-leakage-area', 'building.floorArea'],
    ['normalized-leakage-area', 'building.enclosureArea'],
    ['flow-10-per-enclosure-area', 'building.enclosureArea'],
    ['flow-50-per-floor-area', 'building.floorArea'],
  ] as const) {
    const job = fakeJob({ floorArea: '', enclosureArea: '' })
    const one = fakeTest({}, { limit: 'own', ownLimitFigure: figure, ownLimit: '1' })
    const { report } = reduceTest(job, one, fakeDevices())
    expect(verdictOf(job, one, report?.figures).problems.map((problem) => problem.path)).toEqual([path])
  }
})
