/**
 * The same test of the same house is the same physics, however it is typed: no published source, these hold by the
 * equations themselves. Units: NIST SP 811.
 */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { reduce } from '../../lib/engine/index.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { convert } from '../../lib/units/convert.ts'
import { figure, off } from './support.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A sheet in m3/h, degC and m, of a house that leaks about as houses do. */
const metricSheet: fc.Arbitrary<Sheet> = fc
  .record({
    procedure: fc.constantFrom('one-point' as const, 'two-point' as const, 'astm-e779' as const, 'iso-9972' as const),
    direction: fc.constantFrom('depressurize' as const, 'pressurize' as const),
    flowBasis: fc.constantFrom('indicated' as const, 'actual' as const),
    coefficient: number(5, 400),
    exponent: number(0.52, 0.8),
    scatter: fc.array(number(-0.03, 0.03), { minLength: 8, maxLength: 8 }),
    count: fc.integer({ min: 5, max: 8 }),
    before: fc.array(number(-3, 3), { maxLength: 4 }),
    after: fc.array(number(-3, 3), { maxLength: 4 }),
    indoor: number(10, 30),
    outdoor: number(-30, 42),
    elevation: number(0, 3000),
    barometer: fc.option(number(70_000, 104_000)),
    withAir: fc.boolean(),
    building: fc.record({
      volume: number(100, 2000),
      floorArea: number(40, 600),
      enclosureArea: number(100, 1500),
      height: number(2.2, 15),
      bedrooms: fc.integer({ min: 0, max: 6 }),
    }),
  })
  // oxlint-disable-next-line oxc/no-map-spread -- this maps one sheet at a time, not a list
  .map((given) => ({
    subject: 'enclosure',
    procedure: given.procedure,
    direction: given.direction,
    units: { flow: 'm3/h', temperature: 'degC', length: 'm' },
    baseline: { before: given.before, after: given.after },
    flowBasis: given.flowBasis,
    points: given.scatter.slice(0, given.procedure === 'one-point' ? 1 : given.count).map((scatter, index) => {
      const pressure = 60 - 6 * index
      return {
        pressure: given.direction === 'pressurize' ? pressure : -pressure,
        flow: given.coefficient * pressure ** given.exponent * (1 + scatter),
      }
    }),
    ...(given.withAir && {
      air: {
        indoor: given.indoor,
        outdoor: given.outdoor,
        elevation: given.elevation,
        ...(given.barometer !== null && { barometer: given.barometer }),
      },
    }),
    building: given.building,
    weatherShieldingFactor: 0.6,
  }))

type Shown = Sheet['points'][number] & { flow: number }
const shown = (sheet: Sheet): Shown[] => sheet.points as Shown[]

const inFeet = (value: number, power: string) => convert(value, `m${power}`, `ft${power}`)

function inImperial(sheet: Sheet): Sheet {
  const { air, building = {}, ...rest } = sheet
  return {
    ...rest,
    units: { flow: 'cfm', temperature: 'degF', length: 'ft' },
    points: shown(sheet).map(({ pressure, flow }) => ({ pressure, flow: convert(flow, 'm3/h', 'cfm') })),
    ...(air && {
      air: {
        ...air,
        indoor: convert(air.indoor, 'degC', 'degF'),
        outdoor: convert(air.outdoor, 'degC', 'degF'),
        ...(air.elevation !== undefined && { elevation: inFeet(air.elevation, '') }),
      },
    }),
    building: {
      ...building,
      volume: inFeet(building.volume ?? 0, '3'),
      floorArea: inFeet(building.floorArea ?? 0, '2'),
      enclosureArea: inFeet(building.enclosureArea ?? 0, '2'),
      height: inFeet(building.height ?? 0, ''),
    },
  }
}

const scaled = (sheet: Sheet, by: number): Sheet => ({
  ...sheet,
  points: shown(sheet).map(({ pressure, flow }) => ({ pressure, flow: flow * by })),
})

/** The numbers of two reports that differ by more than `most`, relative; the second is to be `by` times the first. */
function differences(one: Sheet, other: Sheet, by: (id: string) => number = () => 1, most = 1e-12): string[] {
  const [first, second] = [reduce(one), reduce(other)]
  const ids = new Set([...Object.keys(first.figures), ...Object.keys(second.figures)])
  return [...ids].flatMap((id) => {
    const [a, b] = [first.figures[id], second.figures[id]]
    if (!a || !b) return [`${id} in one only`]
    // A fan is what is left of a difference: it can be no nearer than what it is the difference of.
    const whole = id.startsWith('fan-required') ? first.figures['ventilation-required']!.value : 0
    const size = Math.max(a.value, a.high ?? 0, whole) * by(id)
    return (['value', 'low', 'high'] as const)
      .filter((key) => {
        if (a[key] === undefined && b[key] === undefined) return false
        const distance = convert(b[key] ?? Number.NaN, b.unit, a.unit) - (a[key] ?? Number.NaN) * by(id)
        return !(Math.abs(distance) <= most * size)
      })
      .map((key) => `${id} ${key}: ${a[key]} ${a.unit}, ${b[key]} ${b.unit}`)
  })
}

describe('the same test is the same result', () => {
  test('in cfm, degF and ft as in m3/h, degC and m', () => {
    fc.assert(
      fc.property(metricSheet, (sheet) => {
        expect(differences(sheet, inImperial(sheet))).toEqual([])
      }),
    )
  })

  test('in L/s as in m3/h', () => {
    fc.assert(
      fc.property(metricSheet, (sheet) => {
        const litres: Sheet = { ...scaled(sheet, 1 / 3.6), units: { ...sheet.units, flow: 'L/s' } }
        expect(differences(sheet, litres)).toEqual([])
      }),
    )
  })

  test('whatever the order of the points', () => {
    fc.assert(
      fc.property(metricSheet, fc.infiniteStream(fc.nat()), (sheet, keys) => {
        const shuffled = sheet.points
          .map((point) => ({ point, key: keys.next().value }))
          .toSorted((a, b) => a.key - b.key)
          .map(({ point }) => point)
        expect(differences(sheet, { ...sheet, points: shuffled }, () => 1, 1e-13)).toEqual([])
      }),
    )
  })

  test('with the minus signs of depressurizing typed or left out', () => {
    fc.assert(
      fc.property(metricSheet, (sheet) => {
        fc.pre(sheet.direction === 'depressurize')
        const unsigned = shown(sheet).map(({ pressure, flow }) => ({ pressure: Math.abs(pressure), flow }))
        expect(differences(sheet, { ...sheet, points: unsigned })).toEqual([])
      }),
    )
  })

  test('through a range of the device as shown by the instrument', () => {
    fc.assert(
      fc.property(metricSheet, number(0.4, 0.6), (sheet, exponent) => {
        const range = { coefficient: Math.max(...shown(sheet).map(({ flow }) => flow)) / 20, exponent }
        const points = shown(sheet).map(({ pressure, flow }) => ({
          pressure,
          devicePressure: (flow / range.coefficient) ** (1 / exponent),
          range: 'one',
        }))
        expect(differences(sheet, { ...sheet, points, device: { ranges: { one: range } } })).toEqual([])
      }),
    )
  })
})

/** Figures that no flow enters. */
const fixed = new Set(['leakage-exponent', 'correlation', 'ventilation-required'])

describe('what must follow', () => {
  test('a house that leaks k times as much has k times the flow, areas and air changes, and the same exponent', () => {
    fc.assert(
      fc.property(metricSheet, number(0.2, 5), (sheet, by) => {
        // The fan that is left to buy is no multiple of the leaks.
        const { bedrooms: _, ...building } = sheet.building ?? {}
        const house = { ...sheet, building }
        expect(differences(house, scaled(house, by), (id) => (fixed.has(id) ? 1 : by))).toEqual([])
      }),
    )
  })

  test('twice the volume has half the air changes', () => {
    fc.assert(
      fc.property(metricSheet, (sheet) => {
        const { volume = 0 } = sheet.building ?? {}
        const larger = { ...sheet, building: { ...sheet.building, volume: 2 * volume } }
        const [changes, halved] = [sheet, larger].map((one) => figure(one, 'air-changes-50').value)
        expect(off(halved, (changes ?? Number.NaN) / 2)).toBeLessThan(1e-12)
      }),
    )
  })

  test('points that lie on a power law give that law back', () => {
    fc.assert(
      fc.property(number(5, 400), number(0.5, 0.99), fc.constantFrom('astm-e779', 'iso-9972'), (c, n, procedure) => {
        const { fit } = reduce({
          subject: 'enclosure',
          procedure,
          direction: 'pressurize',
          units: { flow: 'L/s', temperature: 'degC', length: 'm' },
          baseline: { before: [], after: [] },
          flowBasis: 'actual',
          points: [60, 50, 40, 30, 20, 10].map((pressure) => ({ pressure, flow: c * pressure ** n })),
        })
        expect(off(fit?.coefficient, c)).toBeLessThan(1e-12)
        expect(off(fit?.exponent, n)).toBeLessThan(1e-12)
        expect(off(fit?.correlation, 1)).toBeLessThan(1e-12)
      }),
    )
  })

  test('every limit lies on its side of the value, and no number is other than finite', () => {
    fc.assert(
      fc.property(metricSheet, (sheet) => {
        for (const { value, low = value, high = value } of Object.values(reduce(sheet).figures)) {
          expect([value, low, high].every(Number.isFinite)).toBe(true)
          expect(low).toBeLessThanOrEqual(value)
          expect(high).toBeGreaterThanOrEqual(value)
        }
      }),
    )
  })
})
