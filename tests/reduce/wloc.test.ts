/** The weighted line of organic correlation by hand, and against a Monte Carlo simulation (JCGM 101:2008). */
import { describe, expect, test } from 'vitest'
import { type UncertainPoint, heightError, shiftAt, wlocLine } from '../../lib/reduce/wloc.ts'
import { fitLine } from '../../lib/reduce/fit.ts'
import { source } from '../published/drawn.ts'

const pressures = [60, 52, 44, 36, 28, 20, 12]
const truth = { slope: 0.65, intercept: 4 }

/** Points of a power law with the noise of pressures and flows, in logarithms. */
function drawn(
  normal: () => number,
  ux: (pressure: number) => number,
  uy: (pressure: number) => number,
): UncertainPoint[] {
  return pressures.map((pressure) => {
    const x = Math.log(pressure)
    const [a, b] = [ux(pressure), uy(pressure)]
    return { x: x + a * normal(), y: truth.intercept + truth.slope * x + b * normal(), ux: a, uy: b }
  })
}

const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length
const deviation = (list: readonly number[]) => Math.sqrt(mean(list.map((one) => (one - mean(list)) ** 2)))

const height = (x: number, { slope, intercept }: { slope: number; intercept: number }) => intercept + slope * x

describe('the weighted line of organic correlation', () => {
  test('of one weight it is the ratio of the standard deviations, by hand', () => {
    // x 1 2 3 4, middle 2.5, squares 5; y 2 5 4 9, middle 5, squares 9 + 0 + 1 + 16 = 26: √(26 / 5) = 2.28035.
    const line = wlocLine([2, 5, 4, 9].map((y, at) => ({ x: at + 1, y, ux: 0.1, uy: 0.1 })))
    expect(line.slope).toBeCloseTo(Math.sqrt(26 / 5), 12)
    expect(line.intercept).toBeCloseTo(5 - 2.5 * Math.sqrt(26 / 5), 12)
    // Each y counts with b (y - ȳ) / 26, each x with b (x - x̄) / 5: u² = 0.01 b² (1 / 26 + 1 / 5).
    expect(line.slopeError).toBeCloseTo(0.1 * Math.sqrt((26 / 5) * (1 / 26 + 1 / 5)), 12)
  })

  test('points on a line give the line, whatever their weights, and fall with it', () => {
    for (const slope of [0.65, -1.5, 400]) {
      const line = wlocLine([1, 2, 4, 7].map((x) => ({ x, y: 3 + slope * x, ux: 0.01 * x, uy: 0.1 / x })))
      expect(line.slope).toBeCloseTo(slope, 9)
      expect(line.intercept).toBeCloseTo(3, 8)
      expect(line.scatter).toBeLessThan(1e-9)
    }
  })

  test('a point of great uncertainty does not move the line', () => {
    const good = [1, 2, 3].map((x) => ({ x, y: 2 * x, ux: 0.01, uy: 0.01 }))
    expect(wlocLine([...good, { x: 0, y: 5, ux: 0, uy: 1e6 }]).slope).toBeCloseTo(2, 6)
  })

  test('it is refused where there is none', () => {
    const point = { ux: 0.1, uy: 0.1 }
    const flat = [1, 2, 3].map((x) => Object.assign({ x, y: 1 }, point))
    const same = [1, 2, 3].map((y) => Object.assign({ x: 1, y }, point))
    for (const points of [flat, same, [], flat.slice(1)]) expect(() => wlocLine(points)).toThrow(RangeError)
    expect(() => wlocLine([1, 2, 3].map((x) => ({ x, y: x, ux: 0, uy: 0 })))).toThrow('no uncertainty')
    expect(() => wlocLine([1, 2, 3].map((x) => ({ x, y: x, ux: Number.NaN, uy: 1 })))).toThrow('no uncertainty')
  })

  test.each([
    ['calm', 0.2, 0.005],
    ['breezy', 0.7, 0.01],
  ])('%s: standard uncertainties of slope, intercept and heights are those of 4,000 draws', (_, pressure, flow) => {
    const { normal } = source(31)
    const lines = Array.from({ length: 4000 }, () =>
      wlocLine(
        drawn(
          normal,
          (at) => pressure / at,
          () => flow,
        ),
      ),
    )
    const stated = (of: (line: (typeof lines)[number]) => number) => mean(lines.map(of))
    expect(stated((line) => line.slopeError) / deviation(lines.map((line) => line.slope))).toBeCloseTo(1, 1)
    expect(stated((line) => line.interceptError) / deviation(lines.map((line) => line.intercept))).toBeCloseTo(1, 1)
    for (const x of [Math.log(4), Math.log(50)]) {
      const heights = lines.map(({ slope, intercept }) => intercept + slope * x)
      expect(stated((line) => heightError(line, x)) / deviation(heights)).toBeCloseTo(1, 1)
    }
    expect(stated((line) => line.scatter)).toBeCloseTo(1, 1)
    // The slope is nearly unbiased: a fifth of its own scatter at most.
    expect(Math.abs(stated((line) => line.slope) - truth.slope)).toBeLessThan(
      0.2 * deviation(lines.map((line) => line.slope)),
    )
  })

  test('noise of the pressures flattens it less than it flattens a line of ordinary least squares', () => {
    const { normal } = source(32)
    const [noise, draws] = [0.12, 8000]
    const all = Array.from({ length: draws }, () =>
      drawn(
        normal,
        () => noise,
        () => 0.001,
      ),
    )
    const short = truth.slope - mean(all.map((points) => wlocLine(points).slope))
    const ordinary =
      truth.slope -
      mean(
        all.map(
          (points) =>
            fitLine(
              points.map(({ x }) => x),
              points.map(({ y }) => y),
            ).slope,
        ),
      )
    // To the second order of the noise, for N points with the sum of squares S: ordinary b u² (N - 3) / S, organic
    // correlation b u² (N - 4) / 2 S; N = 7.
    const x = pressures.map((pressure) => Math.log(pressure))
    const squares = x.reduce((sum, one) => sum + (one - mean(x)) ** 2, 0)
    const unit = (truth.slope * noise ** 2) / squares
    const error = (3 * truth.slope * noise) / Math.sqrt(squares * draws)
    expect(Math.abs(ordinary - 4 * unit)).toBeLessThan(error)
    expect(Math.abs(short - 1.5 * unit)).toBeLessThan(error)
    expect(short).toBeLessThan(0.6 * ordinary)
  })

  test('what all points have in common is carried through as it is when they are moved', () => {
    const { normal } = source(33)
    const points = drawn(
      normal,
      (pressure) => 0.7 / pressure,
      () => 0.01,
    )
    const line = wlocLine(points)
    const moves: [dx: number[], dy: number[]][] = [
      [pressures.map(() => 0), pressures.map(() => 0.025)],
      [pressures.map((pressure) => 1e-4 / pressure), pressures.map(() => 0)],
      [pressures.map(() => 0), pressures.map((pressure) => (pressure > 30 ? 1e-4 : -1e-4))],
    ]
    for (const [dx, dy] of moves) {
      const moved = points.map((point, at) => Object.assign({}, point, { x: point.x + dx[at]!, y: point.y + dy[at]! }))
      for (const x of [Math.log(4), Math.log(50)]) {
        const change = height(x, wlocLine(moved)) - height(x, line)
        expect(shiftAt(line, x, dx, dy) / change).toBeCloseTo(1, 1)
      }
    }
  })
})
