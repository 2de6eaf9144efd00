/** Whatever is typed: a report of finite numbers, or a SheetError; and soon. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { SheetError } from '../../lib/reduce/errors.ts'
import { points } from '../../lib/reduce/points.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import { reportSchema } from '../../lib/reduce/report.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { fakeRegression } from './sheets.ts'

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, 1e-300, 5e-324, 1e308, -1, 0.001, 1e9, Number.NaN, Infinity),
  fc.double({ min: -100, max: 1000, noNaN: true }),
)
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined })

function sheets(number: fc.Arbitrary<number>, pressure: fc.Arbitrary<number>, flow: fc.Arbitrary<number>) {
  return fc.record({
    subject: fc.constantFrom('enclosure', 'ducts'),
    procedure: fc.constantFrom('one-point', 'astm-e779', 'iso-9972'),
    direction: fc.constantFrom('depressurize', 'pressurize'),
    units: fc.record({
      flow: fc.constantFrom('cfm', 'm3/h', 'L/s'),
      temperature: fc.constantFrom('degF', 'degC'),
      length: fc.constantFrom('ft', 'm'),
    }),
    baseline: fc.record({ before: fc.array(number, { maxLength: 3 }), after: fc.array(number, { maxLength: 3 }) }),
    points: fc.array(
      fc.oneof(
        fc.record({ pressure, flow }),
        fc.record({ pressure, devicePressure: number, range: fc.constantFrom('A', '__proto__', 'toString') }),
      ),
      { maxLength: 8 },
    ),
    flowBasis: fc.constantFrom('indicated', 'actual'),
    device: some(
      fc.record({
        ranges: fc.constant({ A: { coefficient: 100, exponent: 0.5 } }),
        calibrationDensity: some(number),
      }),
    ),
    air: some(fc.record({ indoor: number, outdoor: number, elevation: some(number), barometer: some(number) })),
    exponent: some(number),
    exponentUncertainty: some(number),
    instrument: some(fc.record({ pressurePercent: number, pressureFloor: number, flowPercent: number })),
    building: some(
      fc.record({
        volume: some(number),
        floorArea: some(number),
        enclosureArea: some(number),
        height: some(number),
        bedrooms: some(number),
        volumePercent: some(number),
      }),
    ),
    duct: some(fc.record({ leakage: fc.constantFrom('total', 'outside'), airHandlerFlow: some(number) })),
    weatherShieldingFactor: some(number),
  })
}

/** What is wrong with what a sheet comes to; nothing when all is well. */
function flawOf(sheet: unknown): string | undefined {
  try {
    const report = reduce(sheet as Sheet)
    // zod refuses NaN and Infinity wherever the report holds a number.
    const parsed = reportSchema.safeParse(report)
    if (!parsed.success) return JSON.stringify(parsed.error.issues)
    const text = JSON.stringify(report)
    if (/NaN|Infinity|undefined/.test(text)) return text
    for (const [id, { low, high, value }] of Object.entries(report.figures)) {
      if ((low ?? value) > value || (high ?? value) < value) return `${id} lies outside its limits`
    }
    return points(sheet as Sheet).every(({ atReference }) => Number.isFinite(atReference)) ? undefined : 'points'
  } catch (error) {
    if (error instanceof SheetError && error.issues.length > 0) return 'refused'
    return `${String(error)} is no SheetError`
  }
}

/** How many sheets came to what. */
function tally(arbitrary: fc.Arbitrary<unknown>, numRuns: number): Record<string, number> {
  const found: Record<string, number> = { reports: 0, refused: 0 }
  fc.assert(
    fc.property(arbitrary, (sheet) => {
      const flaw = flawOf(sheet) ?? 'reports'
      found[flaw] = (found[flaw] ?? 0) + 1
      return flaw in { reports: 0, refused: 0 }
    }),
    { numRuns },
  )
  return found
}

function time(sheet: Sheet): number {
  const start = performance.now()
  reduce(sheet)
  return performance.now() - start
}

function median(times: number[]): number {
  return times.toSorted((a, b) => a - b)[times.length >> 1]!
}

test('numbers of any kind', () => {
  expect(tally(sheets(wild, wild, wild), 1500)['refused']).toBeGreaterThan(1000)
})

test('anything at all', () => {
  expect(tally(fc.anything(), 500)['refused']).toBe(500)
})

test('numbers that a gauge could show', () => {
  // oxlint-disable-next-line oxc/no-map-spread -- this is the map of an arbitrary, not of an array
  const shown = sheets(between(0.01, 9), between(10, 70), between(1, 9000)).map((sheet) => ({
    ...sheet,
    points: sheet.points.map((point) => ('range' in point ? { ...point, range: 'A' } : point)),
    device: { ranges: { A: { coefficient: 100, exponent: 0.5 } } },
    air: sheet.air && { ...sheet.air, barometer: 90_000 },
    exponent: undefined,
    exponentUncertainty: 0.05,
    weatherShieldingFactor: 0.6,
  }))
  expect(tally(shown, 1000)['reports']).toBeGreaterThan(300)
})

test('pressures close together and flows of any size', () => {
  const regression = fc.array(fc.record({ pressure: between(0.01, 0.02), flow: between(1e-9, 1e9) }), {
    minLength: 3,
    maxLength: 6,
  })
  const close = regression.map((typed) =>
    fakeRegression({ points: typed.map(({ pressure, flow }) => ({ pressure: -pressure, flow })) }),
  )
  const { reports = 0, refused = 0 } = tally(close, 500)
  expect(reports).toBeGreaterThan(0)
  expect(refused).toBeGreaterThan(0)
})

test('5,000 points are reduced in well under a second, a typical sheet in well under a millisecond', () => {
  const many = fakeRegression({
    points: Array.from({ length: 5000 }, (_, index) => ({
      pressure: -(10 + index / 100),
      flow: 100 * (10 + index / 100) ** 0.65 * (1 + 0.01 * Math.sin(index)),
    })),
  })
  expect(median(Array.from({ length: 5 }, () => time(many)))).toBeLessThan(500)
  const typical = fakeRegression({ air: { indoor: 70, outdoor: 30 }, building: { volume: 20_000, floorArea: 2400 } })
  expect(median(Array.from({ length: 500 }, () => time(typical)))).toBeLessThan(1)
})
