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

/**
 * Mean of the weighted squares of what is left, when each reading scatters by itself.
 *
 * @param scatter variance that each reading has
 * @param variances whose inverse is the weight of each
 */
function expectedOf(
  found: Estimate,
  away: readonly number[],
  scatter: readonly number[],
  variances: readonly number[],
): number {
  const { line, stations, slopeShares } = found
  if (!line) {
    // Of a mean of m: v (1 - 2/m) + sum of v' / m squared.
    return total(
      stations.map(({ from }) => {
        const count = from.length
        const sum = total(from.map((index) => scatter[index]!))
        return total(from.map((index) => (scatter[index]! * (1 - 2 / count) + sum / count ** 2) / variances[index]!))
      }),
    )
  }
  // With c and b, each reading's share in the middle of the line and in its slope, what is left of a reading at d holds
  // 1 - c - b d of its own error and -(c' + b' d) of each other's.
  const middle = found.shares(line.meanX)
  const [sum, mixed, tilt] = [0, 1, 2].map((power) =>
    total(scatter.map((one, index) => one * middle[index]! ** (2 - power) * slopeShares[index]! ** power)),
  ) as [number, number, number]
  return total(
    variances.map((variance, index) => {
      const d = away[index]!
      const own = middle[index]! + slopeShares[index]! * d
      return (scatter[index]! * (1 - 2 * own) + sum + 2 * d * mixed + d ** 2 * tilt) / variance
    }),
  )
}

/**
 * How the readings scatter about the estimate, against what was expected of them; `perEven`: the variance that, had every
 * reading the same, would scatter as much as `variances` do.
 *
 * @param variances of each reading by itself
 * @param shared errors that readings have in common, each as what it does to the logarithm of every flow
 */
function shownBy(
  found: Estimate,
  readings: readonly Reading[],
  variances: readonly number[],
  shared: readonly (readonly number[])[],
): (Shown & { perEven: number }) | undefined {
  const { line, stations, exponent } = found
  const freedom = line ? line.count - 2 : total(stations.map(({ from }) => from.length - 1))
  if (freedom < 1) return undefined
  const away = readings.map(({ pressure }) => Math.log(pressure) - (line?.meanX ?? 0))
  const weighted = (values: readonly number[]) =>
    total(leftOf(found, away, values).map((value, index) => value ** 2 / variances[index]!))
  const squares = weighted(readings.map(({ asRead, pressure }) => Math.log(asRead) - exponent * Math.log(pressure)))
  const own = expectedOf(found, away, variances, variances)
  const even = expectedOf(
    found,
    away,
    variances.map(() => 1),
    variances,
  )
  return { ratio: squares / (own + total(shared.map(weighted))), freedom, perEven: own / even }
}

/**
 * Of each range, and of each of several fans by its share of the flow: its standard uncertainty in the logarithm of the flow
 * of every reading. Flows that were shown are of one range. Source: JCGM 100, 5.1.2, for a sum of flows.
 */
function devicesOf({ points, instrument }: Sheet): number[][] {
  const flow = instrumentParts(instrument, 50).flow / 2
  const found = new Map<string, number[]>()
  points.forEach((point, index) => {
    const add = (name: string, u: number) => {
      const known = found.get(name) ?? points.map(() => 0)
      known[index]! += u
      found.set(name, known)
    }
    if ('range' in point) add(`range ${point.range}`, flow)
    else if (!point.fans) add('shown', flow)
    else
      for (const fan of point.fans)
        add(`fan ${fan.name}`, ((fan.percent === undefined ? flow : fan.percent / 200) * fan.flow) / point.flow)
  })
  return [...found.values()]
}

/** The budget of the flow at any pressure and of the exponent. */
export function wholeBudget(sheet: Sheet, readings: readonly Reading[], found: Estimate): Unsure {
  const { exponent, assumed, stations } = found
  const baseline = baselineNoise(sheet)
  const variances = readings.map(({ pressure }) =>
    readingVariance(baseline.reading, exponent, pressure, targetOf(sheet)),
  )
  const devices = devicesOf(sheet)
  const gauge = readings.map(({ pressure }) => (exponent * instrumentParts(sheet.instrument, pressure).pressure) / 2)
  const carried = readings.map(({ pressure }) => exponent / pressure)
  const shared = [...devices, gauge, carried.map((one) => one * Math.hypot(baseline.mean, baseline.drift))]
  const shown = shownBy(found, readings, variances, shared)
  const { factor, freedom, wind } = scatterFactor(baseline.freedom, shown)
  // More scatter than expected may come with the pressure, or alike with every reading: the wider limits of the two hold.
  const even = shown ? Math.max(0, factor - 1) * shown.perEven : 0

  const parts = (shares: readonly number[]): Part[] => {
    let [gauges, one, own, squares] = [0, 0, 0, 0]
    for (let index = 0; index < shares.length; index++) {
      const share = shares[index]!
      gauges += share * gauge[index]!
      one += share * carried[index]!
      own += share ** 2 * variances[index]!
      squares += share ** 2
    }
    one = Math.abs(one)
    const alike = Math.min(1, factor) * own + even * squares
    return [
      {
        part: 'device',
        u: Math.hypot(...devices.map((each) => total(each.map((u, index) => u * shares[index]!)))),
        common: 'range',
      },
      { part: 'gauge', u: Math.abs(gauges), common: 'test' },
      { part: 'baseline', u: one * baseline.mean * Math.sqrt(wind), common: 'test', freedom },
      { part: 'drift', u: one * baseline.drift, common: 'test' },
      {
        part: 'wind',
        u: Math.sqrt(Math.max(factor * own, alike)),
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
    basis: { baseline, variances, factor, even, wind, freedom, devices },
  }
}
