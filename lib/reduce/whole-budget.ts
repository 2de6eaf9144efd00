/**
 * The whole budget of a test: flow device, gauge, baseline and its drift, wind, assumed exponent. What an error does to a
 * figure follows from how the figure hangs on each reading, so one procedure differs from another by its shares alone.
 * Source: JCGM 100, 5.1.2 and 5.2.2 (errors that readings have in common).
 */
import type { Sheet } from '../sheet/schema.ts'
import { type Part, combined } from './budget.ts'
import { type Estimate, targetOf } from './estimate.ts'
import type { Reading } from './flow.ts'
import { type Shown, baselineNoise, readingVariance, scatterFactor } from './noise.ts'
import type { Unsure } from './scatter-alone.ts'
import { instrumentParts, usualExponentUncertainty } from './uncertainty.ts'

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/**
 * What is left of a logarithm of each reading once the estimate has taken its part: the distance from the line, or from
 * the mean of the station. Readings that the estimate leaves out give 0.
 */
function leftOf(found: Estimate, away: readonly number[], values: readonly number[]): number[] {
  const { line, stations, slopeShares } = found
  if (line) {
    const middle = found.shares(line.meanX)
    const mean = total(values.map((value, index) => value * middle[index]!))
    const slope = total(values.map((value, index) => value * slopeShares[index]!))
    return values.map((value, index) => value - mean - slope * away[index]!)
  }
  const left = values.map(() => 0)
  for (const { from } of stations) {
    const mean = total(from.map((index) => values[index]!)) / from.length
    for (const index of from) left[index] = values[index]! - mean
  }
  return left
}

/** Mean of the weighted squares of what is left, when each reading scatters by itself as expected. */
function expectedOf(
  { line, stations, byWeights }: Estimate,
  away: readonly number[],
  variances: readonly number[],
): number {
  if (!line) {
    // With h = 1/m: v (1 - 2/m) + sum of v' / m squared.
    return total(
      stations.map(({ from }) => {
        const count = from.length
        const sum = total(from.map((index) => variances[index]!))
        return total(from.map((index) => 1 - 2 / count + sum / count ** 2 / variances[index]!))
      }),
    )
  }
  if (byWeights) return line.count - 2
  // With h = 1/N + d d'/Sxx, what is left of each has the mean square v (1 - 2h) + sum of h' squared v'.
  const sums = [0, 1, 2].map((power) => total(variances.map((variance, index) => variance * away[index]! ** power)))
  const { count, sumSquares } = line
  return total(
    variances.map((variance, index) => {
      const d = away[index]!
      const own = 1 / count + d ** 2 / sumSquares
      const others =
        sums[0]! / count ** 2 + (2 * d * sums[1]!) / (count * sumSquares) + (d ** 2 * sums[2]!) / sumSquares ** 2
      return 1 - 2 * own + others / variance
    }),
  )
}

/**
 * How the readings scatter about the estimate, against what was expected of them.
 *
 * @param variances of each reading by itself
 * @param shared errors that readings have in common, each as what it does to the logarithm of every flow
 */
function shownBy(
  found: Estimate,
  readings: readonly Reading[],
  variances: readonly number[],
  shared: readonly (readonly number[])[],
): Shown | undefined {
  const { line, stations, exponent } = found
  const freedom = line ? line.count - 2 : total(stations.map(({ from }) => from.length - 1))
  if (freedom < 1) return undefined
  const away = readings.map(({ pressure }) => Math.log(pressure) - (line?.meanX ?? 0))
  const weighted = (values: readonly number[]) =>
    total(leftOf(found, away, values).map((value, index) => value ** 2 / variances[index]!))
  const squares = weighted(readings.map(({ asRead, pressure }) => Math.log(asRead) - exponent * Math.log(pressure)))
  const expected = expectedOf(found, away, variances) + total(shared.map(weighted))
  return { ratio: squares / expected, freedom }
}

/** The budget of the flow at any pressure and of the exponent. */
export function wholeBudget(sheet: Sheet, readings: readonly Reading[], found: Estimate): Unsure {
  const { exponent, assumed, stations } = found
  const baseline = baselineNoise(sheet)
  const variances = readings.map(({ pressure }) =>
    readingVariance(baseline.reading, exponent, pressure, targetOf(sheet)),
  )
  const flow = instrumentParts(sheet.instrument, 50).flow / 2
  const gauge = readings.map(({ pressure }) => (exponent * instrumentParts(sheet.instrument, pressure).pressure) / 2)
  const carried = readings.map(({ pressure }) => exponent / pressure)
  const ranges = sheet.points.map((point) => ('range' in point ? `range ${point.range}` : 'shown'))
  const shared = [
    ...[...new Set(ranges)].map((range) => ranges.map((own) => (own === range ? flow : 0))),
    gauge,
    carried.map((one) => one * Math.hypot(baseline.mean, baseline.drift)),
  ]
  const { factor, freedom } = scatterFactor(baseline.freedom, shownBy(found, readings, variances, shared))

  const parts = (shares: readonly number[]): Part[] => {
    const byRange = new Map<string, number>()
    shares.forEach((share, index) => byRange.set(ranges[index]!, (byRange.get(ranges[index]!) ?? 0) + share))
    const sum = (of: readonly number[]) => Math.abs(total(shares.map((share, index) => share * of[index]!)))
    const one = sum(carried)
    return [
      { part: 'device', u: flow * Math.hypot(...byRange.values()), common: 'range' },
      { part: 'gauge', u: sum(gauge), common: 'test' },
      { part: 'baseline', u: one * baseline.mean, common: 'test', freedom },
      { part: 'drift', u: one * baseline.drift, common: 'test' },
      {
        part: 'wind',
        u: Math.sqrt(factor * total(shares.map((share, index) => share ** 2 * variances[index]!))),
        common: 'reading',
        freedom,
      },
    ]
  }
  const uncertainty = assumed ? (sheet.exponentUncertainty ?? usualExponentUncertainty) : 0
  const from = assumed ? Math.log(stations[0]!.pressure) : 0
  const ofExponent = (u: number): Part[] => (assumed ? [{ part: 'exponent', u, common: 'test' }] : [])
  return {
    at: (x, slope) =>
      combined([...parts(found.shares(x + slope)), ...ofExponent(uncertainty * Math.abs(x + slope - from))]),
    exponent: combined(assumed ? ofExponent(uncertainty) : parts(found.slopeShares)),
    basis: { baseline, variances, factor, freedom, ranges },
  }
}
