/** How much single readings scatter: what wind does to a pressure, and what the points show of it. */
import type { Sheet } from '../sheet/schema.ts'

/**
 * Standard deviation of one pressure reading in calm weather, Pa, where the readings of the baseline show none and the
 * sheet gives none: common practice, no source.
 */
export const calmScatter = 0.2

/**
 * Degrees of freedom of that assumption, known to no better than seven tenths of itself, and of a scatter that the sheet
 * gives, known to about a third. Source: JCGM 100, G.4.2.
 */
const assumedFreedom = 1
const givenFreedom = 4

/** What a gauge that shows tenths of a pascal hides, Pa: JCGM 100, 4.3.7. */
const resolution = 0.1 / Math.sqrt(12)

/** The random part of a flow that was read once, as a fraction, at the least: common practice, no source. */
const steadyFlow = 0.005

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

const squaresOf = (values: readonly number[]): number => {
  const about = values.length > 0 ? mean(values) : 0
  return values.reduce((sum, value) => sum + (value - about) ** 2, 0)
}

/** What the baseline shows of wind, and how well it is known itself. Pa. */
export interface BaselineNoise {
  /** Standard deviation of one pressure reading while the points were read. */
  reading: number
  /** Standard uncertainty of the mean baseline from its scatter; 0 without a baseline. */
  mean: number
  /** Standard uncertainty from the drift between before and after, uniform between the two means. */
  drift: number
  /** Degrees of freedom of `reading` and `mean`. */
  freedom: number
  /** Sum of the squares that the scatter is the root of, over `freedom`. */
  squares: number
  /** Whether {@link calmScatter} is in it, for want of readings. */
  assumed: boolean
}

/**
 * Scatter and drift of the zero-flow pressures: the scatter of the readings before and after, pooled; with few of them also
 * the usual scatter of calm weather, and the difference of two single readings. The scatter falls with the square root of
 * the averaging time. Source: JCGM 100, 4.2 and 4.3.7; that the zero-flow pressure fluctuates during the test and belongs
 * into the uncertainty: C. Delmotte, AIVC 2016 (abstract read).
 *
 * @example baselineNoise({ baseline: { before: [-1, -2, -3], after: [-1, -2, -3] } }).reading // 1
 */
export function baselineNoise({ baseline, averaging, pressureScatter }: Noisy): BaselineNoise {
  const { before, after } = baseline
  const sides = [before, after].filter((side) => side.length > 0)
  let freedom = sides.reduce((sum, side) => sum + side.length - 1, 0)
  let squares = squaresOf(before) + squaresOf(after)
  const apart = sides.length === 2 ? mean(before) - mean(after) : 0
  const few = freedom < 2
  if (few) {
    if (sides.length === 2 && freedom === 0) {
      squares += apart ** 2 / 2
      freedom += 1
    }
    const worth = pressureScatter === undefined ? assumedFreedom : givenFreedom
    squares += worth * (pressureScatter ?? calmScatter) ** 2
    freedom += worth
  }
  const scatter = Math.max(resolution, Math.sqrt(squares / freedom))
  const { long, short } = averagingOf(averaging)
  return {
    reading: scatter * Math.sqrt(long / short),
    mean: (scatter * Math.sqrt(sides.reduce((sum, side) => sum + 1 / side.length, 0))) / Math.max(1, sides.length),
    drift: Math.abs(apart) / Math.sqrt(12),
    freedom,
    squares,
    assumed: few && pressureScatter === undefined,
  }
}

/** Averaging times of a baseline reading and of a point's, s: as one says nothing without the other, both are then 1. */
export function averagingOf({ baseline, reading }: Sheet['averaging'] = {}): { long: number; short: number } {
  return baseline === undefined || reading === undefined ? { long: 1, short: 1 } : { long: baseline, short: reading }
}

type Noisy = Pick<Sheet, 'baseline'> & Partial<Pick<Sheet, 'averaging' | 'pressureScatter'>>

/** The random part of one flow, as a fraction: as large a share as the pressure makes it at the target. */
export const flowScatter = (scatter: number, exponent: number, target: number): number =>
  Math.max(steadyFlow, (exponent * scatter) / target)

/**
 * Variance of the logarithm of one flow, brought to its pressure: the random part of the flow, and of the pressure as the
 * exponent carries it. The flow is taken to scatter by as large a share as the pressure makes it at the target, at least
 * {@link steadyFlow}: common practice, no source.
 *
 * @param scatter of one pressure reading, Pa
 * @param pressure of the reading, Pa
 * @param target pressure of the result, Pa
 */
export function readingVariance(scatter: number, exponent: number, pressure: number, target: number): number {
  return flowScatter(scatter, exponent, target) ** 2 + ((exponent * scatter) / pressure) ** 2
}

/** What the points themselves show of the scatter, against what was expected of them. */
export interface Shown {
  /** Variance found over variance expected. */
  ratio: number
  freedom: number
}

/**
 * How much larger than expected the scatter of the readings is taken to be: what baseline and points show together. Where
 * the points alone show more, the fan may have brought it, and the mean of both is taken. `wind`: what both show together,
 * never less than expected, for the baseline: the fan was off, the wind was the same.
 *
 * @param freedom of the expectation
 * @example scatterFactor(4, { ratio: 2, freedom: 4 }).factor // 1.75
 */
export function scatterFactor(
  freedom: number,
  shown: Shown | undefined,
): {
  factor: number
  freedom: number
  wind: number
} {
  if (shown === undefined || shown.freedom === 0) return { factor: 1, freedom, wind: 1 }
  const both = freedom + shown.freedom
  const pooled = (freedom + shown.freedom * shown.ratio) / both
  return { factor: (pooled + Math.max(pooled, shown.ratio)) / 2, freedom: both, wind: Math.max(1, pooled) }
}
