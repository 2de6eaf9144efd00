/**
 * The limits of a regression's figures against a Monte Carlo simulation, the method of JCGM 101:2008 (propagation of
 * distributions), seeded. Every reading is drawn anew about the line through the typed ones, and a line of least squares is
 * put through what was drawn. Parts that all readings have in common: the instrument's, one error of flow and one of
 * pressure as a certificate gives them, and the baseline's. Each reading scatters by itself: its pressure as the readings of
 * the baseline do, which weighs more where the pressure is low, and its flow by as large a share as that makes at 50 Pa
 * (common practice, no source). Areas and figures per area follow draw by draw.
 */
import { describe, expect, test } from 'vitest'
import { generator } from '../random.ts'
import { draws, zeroReadings } from './draws.ts'
import { figure, metric, sheet } from './support.ts'

const DRAWS = 20_000
const pressures = [60, 52, 44, 36, 28, 20, 12]
// The points scatter as much as the readings of the baseline let expect: over their variances the squares about the line
// are 1.00 of what is expected of them, worked out apart from the engine.
const scatter = [0.0075, -0.0138, 0.0063, 0.0113, -0.0175, 0.015, -0.0088]
const flows = pressures.map((pressure, at) => 90 * pressure ** 0.64 * (1 + scatter[at]!))
const building = { volume: 420, floorArea: 170, enclosureArea: 450, volumePercent: 4 }
const zero = zeroReadings([-0.8, -0.2], [0.7, -0.5, 0.4, -0.8, 0.6, -0.4, 0.3, -0.3])
const house = sheet({
  procedure: 'iso-9972',
  direction: 'pressurize',
  units: metric,
  baseline: zero.baseline,
  points: pressures.map((pressure, at) => ({ pressure: pressure + zero.mean, flow: flows[at]! })),
  building,
})

const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0)

/** Slope and height at ln P = 0 of a line of least squares: the textbook's sums. */
function lineOf(xs: readonly number[], ys: readonly number[]): { slope: number; height: number } {
  const [x, y, count] = [total(xs), total(ys), xs.length]
  const products = total(xs.map((one, at) => one * ys[at]!))
  const slope = (count * products - x * y) / (count * total(xs.map((one) => one ** 2)) - x ** 2)
  return { slope, height: (y - slope * x) / count }
}

const line = lineOf(
  pressures.map((pressure) => Math.log(pressure)),
  flows.map((flow) => Math.log(flow)),
)

interface Drawn {
  flowAt(pressure: number): number
  exponent: number
  /** A volume or area as a share of what was typed. */
  size: number
}

function drawnOf(seed: number, of: (drawn: Drawn) => number): number[] {
  const { uniform, normal, scatter: scattered } = draws(seed)
  return Array.from({ length: DRAWS }, () => {
    const s = scattered(zero.scatter, zero.freedom)
    const flowShare = 0.025 * normal()
    const pressureShare = 0.5 * normal()
    const common = s * zero.meanShare * normal() + zero.apart * (uniform() - 0.5)
    const steady = Math.max(0.005, (line.slope * s) / 50)
    const drawn = lineOf(
      pressures.map((pressure) =>
        Math.log(pressure + pressureShare * Math.max(0.01 * pressure, 0.25) + common + s * normal()),
      ),
      pressures.map((pressure) => line.height + line.slope * Math.log(pressure) + flowShare + steady * normal()),
    )
    return of({
      flowAt: (pressure) => Math.exp(drawn.height + drawn.slope * Math.log(pressure)),
      exponent: drawn.slope,
      size: 1 + 0.02 * normal(),
    })
  }).toSorted((a, b) => a - b)
}

const area = (flow: number, pressure: number, discharge: number) =>
  (1e4 * flow) / 3600 / (discharge * Math.sqrt((2 * pressure) / 1.2041))

const simulated: Record<string, (drawn: Drawn) => number> = {
  'flow-50': ({ flowAt }) => flowAt(50),
  'flow-4': ({ flowAt }) => flowAt(4),
  'air-changes-50': ({ flowAt, size }) => flowAt(50) / (building.volume * size),
  'flow-50-per-enclosure-area': ({ flowAt, size }) => flowAt(50) / (building.enclosureArea * size),
  'flow-75-per-enclosure-area': ({ flowAt, size }) => flowAt(75) / (building.enclosureArea * size),
  'flow-50-per-floor-area': ({ flowAt, size }) => flowAt(50) / (building.floorArea * size),
  'effective-leakage-area': ({ flowAt }) => area(flowAt(4), 4, 1),
  'equivalent-leakage-area': ({ flowAt }) => area(flowAt(10), 10, 0.611),
  'specific-leakage-area': ({ flowAt, size }) => area(flowAt(4), 4, 1) / 1e4 / (building.floorArea * size),
}

describe('95 % limits of a regression with every part', () => {
  test.each(Object.entries(simulated))('%s', (id, of) => {
    const drawn = drawnOf(101, of)
    const quantile = (share: number) => drawn[Math.round(share * (DRAWS - 1))]!
    const found = figure(house, id)
    expect(found.value / quantile(0.5)).toBeCloseTo(1, 2)
    // Whole effective degrees of freedom, and 2 for 1.96: within 6 %.
    const half = Math.log(found.high! / found.low!) / Math.log(quantile(0.975) / quantile(0.025))
    expect(half).toBeGreaterThan(0.94)
    expect(half).toBeLessThan(1.06)
  })

  test('the exponent', () => {
    const drawn = drawnOf(101, ({ exponent }) => exponent)
    const quantile = (share: number) => drawn[Math.round(share * (DRAWS - 1))]!
    const { low, high } = figure(house, 'leakage-exponent')
    const half = (high! - low!) / (quantile(0.975) - quantile(0.025))
    expect(half).toBeGreaterThan(0.94)
    expect(half).toBeLessThan(1.06)
  })
})

const calm = sheet({ procedure: 'iso-9972', units: metric, points: [], building })

test('the limits of the scatter alone hold the true flow in 95 of 100 tests', () => {
  const random = generator(7)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  // Readings drawn anew about the line: the 95 % interval holds the true flow in 95 of 100 tests.
  let held = 0
  const tests = 4000
  for (let at = 0; at < tests; at++) {
    const points = pressures.map((pressure) => ({ pressure, flow: 90 * pressure ** 0.64 * Math.exp(0.02 * normal()) }))
    const { low, high } = figure({ ...calm, points }, 'flow-50', { instrumentUncertainty: false })
    if (low! <= 90 * 50 ** 0.64 && 90 * 50 ** 0.64 <= high!) held++
  }
  expect(held / tests).toBeGreaterThan(0.94)
  expect(held / tests).toBeLessThan(0.96)
})
