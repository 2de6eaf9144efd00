/**
 * The limits of a regression's figures against a Monte Carlo simulation, the method of JCGM 101:2008 (propagation of
 * distributions), seeded. Two parts are drawn: the scatter of the points, here with Student's t about the fitted line as
 * JCGM 101, 6.4.9, has it for few readings; and the instrument's systematic part, one error of flow and one of pressure
 * shared by every point, as a certificate gives them. Areas and figures per area follow draw by draw.
 */
import { describe, expect, test } from 'vitest'
import { fitLine } from '../../lib/reduce/fit.ts'
import { generator } from '../random.ts'
import { figure, metric, sheet } from './support.ts'

const DRAWS = 20_000
const pressures = [60, 52, 44, 36, 28, 20, 12]
const scatter = [0.012, -0.02, 0.006, 0.015, -0.013, -0.006, 0.008]
const flows = pressures.map((pressure, at) => 90 * pressure ** 0.64 * (1 + scatter[at]!))
const building = { volume: 420, floorArea: 170, enclosureArea: 450, volumePercent: 4 }
const house = sheet({
  procedure: 'iso-9972',
  units: metric,
  points: pressures.map((pressure, at) => ({ pressure, flow: flows[at]! })),
  building,
})

const x = pressures.map((pressure) => Math.log(pressure))
const line = fitLine(
  x,
  flows.map((flow) => Math.log(flow)),
)

/** Draws of the flow at a pressure, and of a volume or area as a share of what was typed. */
function draws(seed: number, of: (flowAt: (pressure: number) => number, size: number) => number): number[] {
  const random = generator(seed)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  return Array.from({ length: DRAWS }, () => {
    // Student's t with N - 2 degrees of freedom: a normal over the root of a mean of squares of N - 2 others.
    const freedom = line.count - 2
    let squares = 0
    for (let at = 0; at < freedom; at++) squares += normal() ** 2
    const spread = line.residual / Math.sqrt(squares / freedom)
    const slope = line.slope + (spread / Math.sqrt(line.sumSquares)) * normal()
    const height = line.intercept + line.slope * line.meanX + (spread / Math.sqrt(line.count)) * normal()
    const flowShare = 0.025 * normal()
    const pressureShare = 0.5 * normal()
    const flowAt = (pressure: number) => {
      const error = pressureShare * Math.max(0.01, 0.25 / pressure)
      return Math.exp(height + slope * (Math.log(pressure) - line.meanX) + line.slope * error + flowShare)
    }
    return of(flowAt, 1 + 0.02 * normal())
  }).toSorted((a, b) => a - b)
}

const area = (flow: number, pressure: number, discharge: number) =>
  (1e4 * flow) / 3600 / (discharge * Math.sqrt((2 * pressure) / 1.2041))

const simulated: Record<string, Parameters<typeof draws>[1]> = {
  'flow-50': (flowAt) => flowAt(50),
  'flow-4': (flowAt) => flowAt(4),
  'air-changes-50': (flowAt, size) => flowAt(50) / (building.volume * size),
  'flow-50-per-enclosure-area': (flowAt, size) => flowAt(50) / (building.enclosureArea * size),
  'flow-75-per-enclosure-area': (flowAt, size) => flowAt(75) / (building.enclosureArea * size),
  'flow-50-per-floor-area': (flowAt, size) => flowAt(50) / (building.floorArea * size),
  'effective-leakage-area': (flowAt) => area(flowAt(4), 4, 1),
  'equivalent-leakage-area': (flowAt) => area(flowAt(10), 10, 0.611),
  'specific-leakage-area': (flowAt, size) => area(flowAt(4), 4, 1) / 1e4 / (building.floorArea * size),
}

describe('95 % limits of a regression with the instrument’s part', () => {
  test.each(Object.entries(simulated))('%s', (id, of) => {
    const drawn = draws(101, of)
    const quantile = (share: number) => drawn[Math.round(share * (DRAWS - 1))]!
    const found = figure(house, id)
    expect(found.value / quantile(0.5)).toBeCloseTo(1, 2)
    // 95 % half-widths of a t and of a normal added in quadrature, and 2 for 1.96: within 6 %.
    const half = Math.log(found.high! / found.low!) / Math.log(quantile(0.975) / quantile(0.025))
    expect(half).toBeGreaterThan(0.94)
    expect(half).toBeLessThan(1.06)
  })
})

test('the limits of the scatter alone hold the true flow in 95 of 100 tests', () => {
  const random = generator(7)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  // Readings drawn anew about the line: the 95 % interval holds the true flow in 95 of 100 tests.
  let held = 0
  const tests = 4000
  for (let at = 0; at < tests; at++) {
    const points = pressures.map((pressure) => ({ pressure, flow: 90 * pressure ** 0.64 * Math.exp(0.02 * normal()) }))
    const { low, high } = figure({ ...house, points }, 'flow-50', { instrumentUncertainty: false })
    if (low! <= 90 * 50 ** 0.64 && 90 * 50 ** 0.64 <= high!) held++
  }
  expect(held / tests).toBeGreaterThan(0.94)
  expect(held / tests).toBeLessThan(0.96)
})
