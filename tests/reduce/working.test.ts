/** A reader with a hand calculator gets from the printed numbers to the printed results. */
import { describe, expect, test } from 'vitest'
import { combine } from '../../lib/reduce/combine.ts'
import { knownHole } from '../../lib/reduce/known-hole.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import { reduction } from '../../lib/reduce/reduction.ts'
import type { Step } from '../../lib/reduce/report.ts'
import { sumSystems } from '../../lib/reduce/systems.ts'
import { zoneLeakage } from '../../lib/reduce/zones.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { follow } from './calculator.ts'
import { fakeRegression, fakeSheet, wholeBuilding } from './sheets.ts'

/** Steps of many numbers or of words: the fit is held against R, the means and densities against tables. */
const notKeyed = new Set([
  'Line through the points',
  'Scatter about the line',
  'Weighted line, to compare',
  'Leakage exponent',
  'Square of the correlation of the fit',
  'Density of the air',
  'Whether the air is corrected for',
  'Duct leakage at 25 Pa, all systems',
])
const isMean = (step: string) => step.startsWith('Mean of repeated readings')

const everything: Partial<Sheet> = {
  building: { ...wholeBuilding, volumePercent: 3 },
  weatherShieldingFactor: 0.59,
  air: { indoor: 70, outdoor: -10, elevation: 6000 },
  baseline: { before: [-1.2, -1], after: [-0.7] },
}
const metric = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
const metricParts: Partial<Sheet> = {
  units: metric,
  building: { volume: 500, floorArea: 200, enclosureArea: 600, height: 5, bedrooms: 3 },
  air: { indoor: 21, outdoor: -12, barometer: 95_000 },
}
const pair = [
  { pressure: -51, flow: 1000 },
  { pressure: -13, flow: 410 },
]
const repeats = [...pair, { pressure: -50.2, flow: 1013 }, { pressure: -14, flow: 421 }]
const device = { ranges: { middle: { coefficient: 110, exponent: 0.49 } }, calibrationDensity: 1.2 }
const ducts: Partial<Sheet> = {
  subject: 'ducts',
  direction: 'pressurize',
  points: [{ pressure: 25.4, flow: 71 }],
  duct: { leakage: 'total', airHandlerFlow: 1050 },
}

const sheets: Record<string, Sheet> = {
  'one point': fakeSheet(everything),
  'one point without air or baseline': fakeSheet({ building: wholeBuilding }),
  'one point, baseline on one side, factor of the threshold': fakeSheet({
    ...everything,
    corrections: 'threshold',
    baseline: { before: [], after: [-0.7] },
  }),
  'one point, repeated': fakeSheet({ ...everything, points: repeats }),
  'one point, metric': fakeSheet({ ...everything, ...metricParts }),
  'one point, L/s': fakeSheet({ ...everything, ...metricParts, units: { ...metric, flow: 'L/s' } }),
  'one point, unsigned': fakeSheet({ ...everything, points: [{ pressure: 48, flow: 900 }] }),
  'pressurizing through a range': fakeSheet({
    ...everything,
    direction: 'pressurize',
    device,
    points: [{ pressure: 49, devicePressure: 82, range: 'middle' }],
  }),
  'two points': fakeSheet({ ...everything, procedure: 'two-point', points: pair }),
  'two points, repeated': fakeSheet({ ...everything, procedure: 'two-point', points: repeats }),
  'ASTM E779': fakeRegression(everything),
  'ISO 9972, metric': fakeRegression({ ...everything, ...metricParts, procedure: 'iso-9972' }),
  ducts: fakeSheet({ ...everything, ...ducts }),
  'ducts, metric': fakeSheet({ ...everything, ...metricParts, ...ducts }),
}

function keyedIn(working: readonly Step[]): void {
  const left: string[] = []
  const keyed = follow(working, left)
  // Six printed digits: differences and powers of them hold to about four.
  const wrong = keyed.filter(({ shown, printed }) => !(Math.abs(shown - printed) <= 2e-4 * Math.abs(printed) + 1e-9))
  expect(wrong).toEqual([])
  expect(left.filter((step) => !notKeyed.has(step) && !isMean(step))).toEqual([])
}

describe('every step of', () => {
  test.each(Object.entries(sheets))('%s', (_, sheet) => {
    const { working } = reduce(sheet)
    keyedIn(working)
    expect(follow(working, []).length).toBeGreaterThan(10)
    keyedIn(reduce(sheet, { onePointFactor: true }).working)
    keyedIn(reduce(sheet, { instrumentUncertainty: false }).working)
  })

  test('what is computed from several reports', () => {
    const [one, other] = [reduce(sheets['one point']!), reduce(sheets['one point, unsigned']!)]
    const steps = [
      combine(one, other).working,
      reduction(one.figures['flow-50']!, other.figures['flow-50']!, { shared: 0.04 }).working,
      knownHole({ area: 100, areaUnit: 'in2', pressure: 50, flowUnit: 'cfm' }).working,
      zoneLeakage({ closed: 2000, opened: 2400, houseZone: 30, zoneOutdoors: 20 }).working,
      sumSystems([reduce(sheets['ducts']!), reduce(sheets['ducts']!)], { floorArea: { value: 2400, unit: 'ft2' } })
        .working,
    ]
    for (const working of steps) keyedIn(working)
    expect(follow(steps.flat(), []).length).toBeGreaterThan(20)
  })
})

test('the calculator notices a wrong digit', () => {
  const { working } = reduce(sheets['one point']!)
  const spoilt = structuredClone(working)
  for (const step of spoilt) step.result = step.result.replace(/(\d)(?=\.)/, '9')
  expect(() => keyedIn(spoilt)).toThrow('to deeply equal')
})
