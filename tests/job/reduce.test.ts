import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { reduceTest } from '../../lib/job/reduce.ts'
import type { TypedSheet } from '../../lib/job/schema.ts'
import { effort, fakeDevices, fakeJob, fakeTest, numbersIn, points } from './fake.ts'

const reduced = (sheet: Partial<TypedSheet> = {}, building = {}) =>
  reduceTest(fakeJob(building), fakeTest(sheet), fakeDevices())

const said = (sheet: Partial<TypedSheet> = {}, building = {}) =>
  reduced(sheet, building).problems.map(({ path, severity, message }) => `${path} [${severity}] ${message}`)

describe('reducing a test', () => {
  test('gives the report, and each typed row at 50 Pa', () => {
    const { report, points: rows, problems } = reduced()
    expect(problems).toEqual([])
    // Worked with a hand calculator from the formulas of ASTM E779 and ISO 9972 (from memory): 753.7 cfm, 2.860 per hour.
    expect(report?.figures['flow-50']?.value).toBeCloseTo(753.7, 1)
    expect(report?.figures['air-changes-50']?.value).toBeCloseTo(2.86, 3)
    expect(rows?.map(({ row, used, atReference }) => [row, used, Math.round(atReference)])).toEqual([
      [0, true, 754],
      [1, false, 757],
      [2, false, 751],
    ])
  })

  test('rows that were left out do not shift the numbers of the others', () => {
    const sheet = { points: points(['', ''], ['-38.7', ''], ['-51.3', '790'], ['-26.2', '502']) }
    const { points: rows, report } = reduced(sheet)
    expect(rows?.map(({ row, used }) => [row, used])).toEqual([
      [2, true],
      [3, false],
    ])
    expect(report?.figures['flow-50']?.note).toContain('Uses point 3,')
  })

  test('mixed signs name the odd ones out', () => {
    const mixed = { points: points(['-51.3', '790'], ['', ''], ['38.7', '658'], ['-26.2', '502']) }
    expect(reduced(mixed).report).toBeUndefined()
    expect(said(mixed)).toMatchInlineSnapshot(`
      [
        "points.2.pressure [bad] Point 3, pressure: it has no minus sign where others have one. Give all pressures of a test the same sign.",
      ]
    `)
    expect(said({ points: points(['51.3', '790'], ['-38.7', '658'], ['-26.2', '502'], ['25', '1']) }))
      .toMatchInlineSnapshot(`
        [
          "points.1.pressure [bad] Point 2, pressure: it has a minus sign where others have none. So have 1 more. Give all pressures of a test the same sign.",
        ]
      `)
    expect(said({ points: points(['51.3', '790'], ['-38.7', '658'], ['26.2', '502']) })).toMatchInlineSnapshot(`
      [
        "points.1.pressure [bad] Point 2, pressure: it has a minus sign where others have none. Give all pressures of a test the same sign.",
      ]
    `)
  })

  test('one point is too few for a regression', () => {
    const one = { procedure: 'astm-e779' as const, points: points(['-51.3', '790']) }
    expect(reduced(one).report).toBeUndefined()
    expect(said(one)).toMatchInlineSnapshot(`
      [
        "points [missing] Points are too few for a regression: type at least 5 (3 can be computed), or choose the one-point procedure.",
      ]
    `)
  })

  test('points at one pressure, or near no line, say so', () => {
    const same = points(['-50', '790'], ['-50', '791'], ['-50', '792'])
    expect(said({ procedure: 'iso-9972', points: same })).toMatchInlineSnapshot(`
      [
        "points [bad] Points are all at the same pressure: take them at several, about 10 to 60 Pa.",
      ]
    `)
  })

  test('a reading no larger than the baseline is left out and the others count', () => {
    const small = { points: points(['-0.9', '30'], ['-51.3', '790']) }
    expect(reduced(small).report?.figures['flow-50']?.value).toBeCloseTo(753.7, 1)
    expect(said(small)).toMatchInlineSnapshot(`
      [
        "points.0.pressure [bad] Point 1, pressure: it is no more than the baseline of -1 Pa: check the signs of both. The row is left out until then.",
      ]
    `)
    expect(said({ points: points(['-0.9', '30']) })).toMatchInlineSnapshot(`
      [
        "points.0.pressure [bad] Point 1, pressure: it is no more than the baseline of -1 Pa: check the signs of both. The row is left out until then.",
      ]
    `)
  })

  test('volume 0 and absurd temperatures leave the figures that do not need them', () => {
    const { report, problems } = reduced({ indoor: '6800' }, { volume: '0' })
    expect(problems.map(({ path }) => path).toSorted()).toEqual(['building.volume', 'indoor'])
    expect(report?.figures['air-changes-50']).toBeUndefined()
    expect(report?.figures['flow-50']?.value).toBeCloseTo(786.9, 1)
  })

  test('the factor of 1.1 multiplies when it is switched on', () => {
    const plain = reduceTest(fakeJob(), fakeTest(), []).report?.figures['flow-50']?.value ?? 0
    const { report } = reduceTest(fakeJob(), fakeTest({}, { onePointFactor: true }), [])
    expect(report?.figures['flow-50']?.value).toBeCloseTo(1.1 * plain, 9)
  })

  test('5,000 rows are reduced quickly', () => {
    const many = Array.from({ length: 5000 }, (_, at): [string, string] => {
      const pressure = 10 + (at % 50)
      return [`-${pressure}`, `${(60 * pressure ** 0.65 * (1 + (at % 7) / 500)).toFixed(1)}`]
    })
    const typed = { procedure: 'astm-e779' as const, points: points(...many), baselineBefore: '0', baselineAfter: '' }
    const { result, milliseconds } = effort(() => reduced(typed))
    const { report, problems } = result
    expect(milliseconds).toBeLessThan(1500)
    expect(problems).toEqual([])
    expect(report?.fit?.exponent).toBeCloseTo(0.65, 2)
  })

  test('5,001 rows are one too many, in a sentence', () => {
    const many = Array.from({ length: 5001 }, (): [string, string] => ['-50', '790'])
    expect(said({ points: points(...many) })).toMatchInlineSnapshot(`
      [
        "points [bad] Readings: 5,001 are too many. Leave at most 5,000, or test in parts.",
      ]
    `)
  })
})

describe('whatever is typed', () => {
  const text = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.double({ min: -2000, max: 2000, noNaN: true }).map(String),
    fc.constantFrom(
      '',
      '0',
      '-0',
      '1e308',
      '1e-308',
      '-50',
      '50',
      '−51,3',
      '1,020',
      '790 cfm',
      'NaN',
      'Infinity',
      '0x10',
    ),
  )
  const row = fc.record({
    pressure: text,
    flow: text,
    devicePressure: text,
    range: fc.constantFrom('', 'wide', 'middle', 'Z'),
  })

  test('nothing throws, no number is NaN or infinite, and every problem is a sentence about a cell', () => {
    fc.assert(
      fc.property(
        fc.record({
          points: fc.array(row, { maxLength: 7 }),
          procedure: fc.constantFrom('one-point' as const, 'astm-e779' as const, 'iso-9972' as const),
          direction: fc.constantFrom('depressurize' as const, 'pressurize' as const),
          reading: fc.constantFrom('flow' as const, 'device' as const),
          subject: fc.constantFrom('enclosure' as const, 'ducts' as const),
          baselineBefore: text,
          baselineAfter: text,
          indoor: text,
          outdoor: text,
          barometer: text,
          exponent: text,
          exponentUncertainty: text,
          pressurePercent: text,
          flowPercent: text,
          airHandlerFlow: text,
        }),
        fc.record({
          volume: text,
          floorArea: text,
          enclosureArea: text,
          height: text,
          bedrooms: text,
          elevation: text,
          volumePercent: text,
        }),
        (sheet, building) => {
          const result = reduced(sheet, building)
          expect(numbersIn(result).every((number) => Number.isFinite(number))).toBe(true)
          expect(result.report !== undefined || result.problems.length > 0).toBe(true)
          for (const { path, message } of result.problems) {
            expect(path).not.toBe('')
            expect(message).toMatch(/^[A-Z].*\.$/su)
            // What was typed may be quoted.
            expect(message.replaceAll(/“[^”]*”/g, '')).not.toMatch(/undefined|NaN|Infinity/)
          }
        },
      ),
      { numRuns: 400 },
    )
  })

  test('bad cells outside the rows never take the flow away', () => {
    fc.assert(
      fc.property(
        fc.record({
          indoor: text,
          outdoor: text,
          barometer: text,
          exponent: text,
          exponentUncertainty: text,
          flowPercent: text,
          pressureFloor: text,
        }),
        fc.record({
          volume: text,
          floorArea: text,
          enclosureArea: text,
          height: text,
          stories: text,
          elevation: text,
          weatherShieldingFactor: text,
        }),
        (sheet, building) => {
          const { report } = reduced({ ...sheet, baselineBefore: '', baselineAfter: '' }, building)
          expect(report?.figures['flow-50']?.value).toBeGreaterThan(0)
        },
      ),
      { numRuns: 300 },
    )
  })
})
