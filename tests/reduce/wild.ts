/** Sheets of every kind, sound, odd and malformed, and what is wrong with what the engine makes of one. */
import * as fc from 'fast-check'
import { SheetError } from '../../lib/reduce/errors.ts'
import { points } from '../../lib/reduce/points.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import { reportSchema } from '../../lib/reduce/report.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { fakeRegression } from './sheets.ts'

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined })

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, 1e-300, 5e-324, 1e308, -1, 0.001, 1e9, Number.NaN, Infinity),
  fc.double({ min: -100, max: 1000, noNaN: true }),
)

function sheets(number: fc.Arbitrary<number>, pressure: fc.Arbitrary<number>, flow: fc.Arbitrary<number>) {
  return fc.record({
    subject: fc.constantFrom('enclosure', 'ducts'),
    procedure: fc.constantFrom('one-point', 'two-point', 'astm-e779', 'iso-9972'),
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
        fc.record({ pressure, devicePressure: number, range: fc.constantFrom('wide', '__proto__', 'toString') }),
      ),
      { maxLength: 8 },
    ),
    flowBasis: fc.constantFrom('indicated', 'actual'),
    device: some(
      fc.record({
        ranges: fc.constant({ wide: { coefficient: 100, exponent: 0.5 } }),
        calibrationDensity: some(number),
      }),
    ),
    air: some(fc.record({ indoor: number, outdoor: number, elevation: some(number), barometer: some(number) })),
    corrections: some(fc.constantFrom('always', 'threshold')),
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
        stories: some(number),
        volumePercent: some(number),
      }),
    ),
    duct: some(fc.record({ leakage: fc.constantFrom('total', 'outside'), airHandlerFlow: some(number) })),
    weatherShieldingFactor: some(number),
    averaging: some(fc.record({ baseline: some(number), reading: some(number) })),
    pressureScatter: some(number),
    fieldCheck: some(fc.record({ area: number, pressure: number, flow: number, discharge: some(number) })),
  })
}

/** Numbers of any kind in the cells of a whole sheet. */
export const wildSheets: fc.Arbitrary<unknown> = sheets(wild, wild, wild)

/** Numbers that a gauge could show. */
// oxlint-disable-next-line oxc/no-map-spread -- this is the map of an arbitrary, not of an array
export const shownSheets: fc.Arbitrary<unknown> = sheets(between(0.01, 9), between(10, 70), between(1, 9000)).map(
  (sheet) => ({
    ...sheet,
    points: sheet.points.map((point) => ('range' in point ? { ...point, range: 'wide' } : point)),
    device: { ranges: { wide: { coefficient: 100, exponent: 0.5 } } },
    air: sheet.air && { ...sheet.air, barometer: 90_000 },
    exponent: undefined,
    exponentUncertainty: 0.05,
    weatherShieldingFactor: 0.6,
    fieldCheck: sheet.fieldCheck && { ...sheet.fieldCheck, discharge: 0.6 },
  }),
)

/** Pressures close together and flows of any size. */
export const closeSheets: fc.Arbitrary<unknown> = fc
  .array(fc.record({ pressure: between(0.01, 0.02), flow: between(1e-9, 1e9) }), { minLength: 3, maxLength: 6 })
  .map((typed) => fakeRegression({ points: typed.map(({ pressure, flow }) => ({ pressure: -pressure, flow })) }))

/** Every place in a value that a path leads to, itself included. */
function placesOf(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [path]
  return [path, ...Object.entries(value).flatMap(([key, inner]) => placesOf(inner, [...path, key]))]
}

function withPlace(value: unknown, [key, ...rest]: (string | number)[], put: unknown): unknown {
  if (key === undefined) return put
  if (Array.isArray(value)) return value.map((inner, at) => (at === Number(key) ? withPlace(inner, rest, put) : inner))
  const object = { ...(value as Record<string, unknown>) }
  if (put === undefined && rest.length === 0) delete object[key]
  else object[key] = withPlace(object[key], rest, put)
  return object
}

/** A sound sheet in which one place holds anything at all, or nothing. */
export const brokenSheets: fc.Arbitrary<unknown> = fc
  .tuple(shownSheets, fc.nat(), fc.oneof(fc.anything(), wild, fc.constant(undefined)))
  .map(([sheet, at, put]) => {
    const places = placesOf(sheet)
    return withPlace(sheet, places[at % places.length]!, put)
  })

export const anySheets: fc.Arbitrary<unknown> = fc.anything()

/** What a sheet comes to: 'report', 'refused', or what is wrong. */
export function outcomeOf(sheet: unknown): string {
  try {
    const report = reduce(sheet as Sheet)
    // zod refuses NaN and Infinity wherever the report holds a number.
    const parsed = reportSchema.safeParse(report)
    if (!parsed.success) return JSON.stringify(parsed.error.issues)
    const text = JSON.stringify(report)
    if (/NaN|Infinity|undefined|\[object/.test(text)) return text
    for (const [id, { low, high, value }] of Object.entries(report.figures)) {
      if ((low ?? value) > value || (high ?? value) < value) return `${id} lies outside its limits`
    }
    return points(sheet as Sheet).every(({ atReference }) => Number.isFinite(atReference)) ? 'report' : 'points'
  } catch (error) {
    if (error instanceof SheetError && error.issues.every(({ message }) => message.length > 0)) {
      return error.issues.length > 0 ? 'refused' : 'refused without an issue'
    }
    return `${String(error)} is no SheetError`
  }
}
