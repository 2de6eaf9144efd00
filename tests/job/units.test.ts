import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { demoJob } from '../../lib/job/demo.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import { jobSchema, type TypedUnits } from '../../lib/job/schema.ts'
import { inOtherUnit, switchTestUnits, switchUnits, unitSets } from '../../lib/job/units.ts'
import { convert } from '../../lib/units/convert.ts'
import { readNumber } from '../../lib/units/read.ts'
import { fakeJob, fakeTest, points } from './fake.ts'

const units = fc.record<TypedUnits>({
  flow: fc.constantFrom('cfm', 'm3/h', 'L/s'),
  temperature: fc.constantFrom('degF', 'degC'),
  length: fc.constantFrom('ft', 'm'),
})

/** A job without what a switch is allowed to change beside the cells. */
const cells = (job: ReturnType<typeof fakeJob>) => ({
  ...job,
  units: undefined,
  converted: undefined,
  tests: job.tests.map((one) => Object.assign({}, one, { units: undefined, converted: undefined })),
})

describe('switching units', () => {
  test('the demo job in metric units', () => {
    const metric = switchUnits(demoJob(), unitSets.SI)
    const after = metric.tests[1]
    expect(jobSchema.parse(metric)).toEqual(metric)
    // NIST SP 811: 1 ft = 0.3048 m exactly, t/degC = (t/degF - 32)/1.8.
    expect([
      metric.building.floorArea,
      metric.building.volume,
      metric.building.height,
      metric.building.elevation,
    ]).toEqual(['172.80', '447.69', '5.2', '189.0'])
    expect(after?.sheet.points.map(({ pressure, flow }) => [pressure, flow])).toEqual([
      ['-51.3', '1342'],
      ['-38.7', '1118'],
      ['-26.2', '853'],
    ])
    expect([after?.sheet.indoor, after?.sheet.outdoor, after?.instrumentFigure]).toEqual(['20.0', '5.0', '1334'])
    expect(after?.converted['points.0.flow']).toEqual({ text: '790', unit: 'cfm', shown: '1342' })
  })

  test('figures stay what they were, since nothing computed passes through the shown text unless it was edited', () => {
    const job = fakeJob()
    const [metric, back] = [switchUnits(job, unitSets.SI), switchUnits(switchUnits(job, unitSets.SI), job.units)]
    const figure = (one: typeof job) => {
      const found = one.tests[1] && reduceTest(one, one.tests[1], []).report?.figures['air-changes-50']
      return found?.value ?? NaN
    }
    expect(figure(back)).toBe(figure(job))
    expect(Math.abs(figure(metric) / figure(job) - 1)).toBeLessThan(0.001)
  })

  test('any round of switches that ends where it began restores every cell as typed', () => {
    fc.assert(
      fc.property(fc.array(units, { maxLength: 6 }), (stops) => {
        const job = fakeJob()
        let switched = job
        for (const stop of stops) switched = switchUnits(switched, stop)
        expect(cells(switchUnits(switched, job.units))).toEqual(cells(job))
      }),
      { numRuns: 60 },
    )
  })

  test('an edited cell is converted from what was typed last', () => {
    const metric = switchTestUnits(fakeTest(), unitSets.SI)
    const edited = { ...metric, sheet: { ...metric.sheet, indoor: '21.5' } }
    const back = switchTestUnits(edited, unitSets.IP)
    expect(back.sheet.indoor).toBe('70.7')
    expect(back.sheet.outdoor).toBe('41')
    expect(switchTestUnits(back, unitSets.SI).sheet.indoor).toBe('21.5')
  })

  test('rows that were moved, put in or taken out keep what was typed in them', () => {
    const metric = switchTestUnits(fakeTest(), unitSets.SI)
    const [first, second, third] = metric.sheet.points
    if (!first || !second || !third) throw new Error('the test lacks a row')
    const moved = { ...metric, sheet: { ...metric.sheet, points: [third, { ...second, flow: '1000' }, first] } }
    expect(switchTestUnits(moved, unitSets.IP).sheet.points.map(({ flow }) => flow)).toEqual(['502', '588.6', '790'])
    const fewer = { ...metric, sheet: { ...metric.sheet, points: [second, third] } }
    expect(switchTestUnits(fewer, unitSets.IP).sheet.points.map(({ flow }) => flow)).toEqual(['658', '502'])
  })

  test('what is no number, or names its own unit, stays as typed', () => {
    const typed = fakeTest({ indoor: 'warm', outdoor: '5 °C', points: points(['-50', ''], ['-40', '790 cfm']) })
    const switched = switchTestUnits(typed, unitSets.SI)
    expect(switched.sheet).toEqual(typed.sheet)
    expect(Object.keys(switched.converted)).toEqual(['instrumentFigure'])
  })

  test('the own limit follows the figure it is set on', () => {
    const perArea = fakeTest({}, { limit: 'own', ownLimit: '0.28', ownLimitFigure: 'flow-50-per-enclosure-area' })
    // 1 cfm/ft2 = 18.288 m3/(h.m2), from 1 ft = 0.3048 m.
    expect(switchTestUnits(perArea, unitSets.SI).ownLimit).toBe('5.1')
    expect(switchTestUnits(fakeTest({}, { ownLimit: '3.0' }), unitSets.SI).ownLimit).toBe('3.0')
  })

  test('decimal commas and typographic minus signs are kept', () => {
    expect(inOtherUnit('20,5', 'degC', 'degF')).toBe('68,9')
    expect(inOtherUnit('−5', 'degC', 'degF')).toBe('23')
    expect(inOtherUnit('−40', 'degF', 'degC')).toBe('−40.0')
  })

  test('going back lands within half a unit of the last digit typed', () => {
    const pairs = fc.constantFrom(
      ['cfm', 'm3/h'],
      ['cfm', 'L/s'],
      ['m3/h', 'L/s'],
      ['ft', 'm'],
      ['ft2', 'm2'],
      ['ft3', 'm3'],
      ['degF', 'degC'],
    )
    fc.assert(
      fc.property(
        pairs,
        fc.boolean(),
        fc.integer({ min: -10_000_000, max: 10_000_000 }),
        fc.integer({ min: 0, max: 6 }),
        ([one = '', two = ''], turned, digits, decimals) => {
          const [from, to] = turned ? [two, one] : [one, two]
          const typed = (digits / 10 ** decimals).toFixed(decimals)
          const shown = inOtherUnit(typed, from, to) ?? ''
          const number = readNumber(shown)
          if (typeof number !== 'number') throw new Error(`${typed} became ${shown}`)
          const back = convert(number, to, from)
          expect(Math.abs(back - Number(typed))).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-6))
        },
      ),
      { numRuns: 500 },
    )
  })
})
