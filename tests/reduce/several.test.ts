/** Whatever is given to what works beside a sheet: finite numbers and sentences, or a RangeError that says what to do. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { combine } from '../../lib/reduce/combine.ts'
import { knownHole } from '../../lib/reduce/known-hole.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import { reduction } from '../../lib/reduce/reduction.ts'
import { sumSystems } from '../../lib/reduce/systems.ts'
import { zoneLeakage, zonePressures } from '../../lib/reduce/zones.ts'
import { fakeSheet } from './sheets.ts'

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, 5e-324, 1e308, -1, 1e9, Number.NaN, Infinity),
  fc.double({ min: 0.01, max: 5000, noNaN: true }),
)
const some = fc.option(wild, { nil: undefined })
const value = fc
  .record({ value: wild, half: fc.double({ min: 0, max: 3, noNaN: true }) })
  .map(({ value: middle, half }) => ({
    value: middle,
    unit: 'cfm',
    low: middle * Math.max(0, 1 - half),
    high: middle * (1 + half),
  }))

/** The numbers in a result that are none, and words that show it. */
function flawsIn(result: unknown): string[] {
  const flaws: string[] = []
  JSON.stringify(result, (key, found: unknown) => {
    if (typeof found === 'number' && !Number.isFinite(found)) flaws.push(key)
    if (typeof found === 'string' && /NaN|Infinity|undefined/.test(found)) flaws.push(found)
    return found
  })
  return flaws
}

function flawsOf(work: () => unknown): string[] {
  try {
    return flawsIn(work())
  } catch (error) {
    return error instanceof RangeError && error.message.endsWith('.') ? [] : [String(error)]
  }
}

const holes = fc.record({
  area: wild,
  areaUnit: fc.constantFrom('in2' as const, 'cm2' as const),
  coefficient: some,
  pressure: wild,
  flowUnit: fc.constantFrom('cfm' as const, 'm3/h' as const, 'L/s' as const),
  density: some,
  measured: some,
})
const zones = fc.record({
  closed: wild,
  opened: wild,
  houseZone: wild,
  zoneOutdoors: wild,
  exponent: some,
  pressure: some,
})

test.each<[string, fc.Arbitrary<() => unknown>]>([
  ['known hole', holes.map((hole) => () => knownHole(hole))],
  ['zone pressures', zones.map((zone) => () => zonePressures(zone))],
  ['zone leakage', zones.map((zone) => () => zoneLeakage(zone))],
  [
    'reduction',
    fc.tuple(value, value, fc.double({ min: 0, max: 2, noNaN: true })).map(
      ([before, after, shared]) =>
        () =>
          reduction(before, after, { shared }),
    ),
  ],
  [
    'sum of systems',
    fc.tuple(fc.array(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), { maxLength: 4 }), wild).map(
      ([flows, area]) =>
        () =>
          sumSystems(
            flows.map((flow) =>
              reduce(fakeSheet({ subject: 'ducts', points: [{ pressure: 25, flow }], duct: { leakage: 'total' } })),
            ),
            { floorArea: { value: area, unit: 'ft2' } },
          ),
    ),
  ],
  [
    'both directions',
    fc.tuple(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), fc.double({ min: 1e-6, max: 1e6, noNaN: true })).map(
      ([one, other]) =>
        () =>
          combine(
            reduce(fakeSheet({ points: [{ pressure: -50, flow: one }] })),
            reduce(fakeSheet({ direction: 'pressurize', points: [{ pressure: 50, flow: other }] })),
          ),
    ),
  ],
])('%s', (_, calls) => {
  fc.assert(
    fc.property(calls, (call) => {
      expect(flawsOf(call)).toEqual([])
    }),
    { numRuns: 2000 },
  )
})
