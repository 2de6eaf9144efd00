import { convert } from '../units/convert.ts'
import { NORMAL_975, normalDistribution } from './normal.ts'
import type { Limit } from './schema.ts'
import { verdictSentences, type Sentence } from './words.ts'

/** A figure as a report gives it; `unit` absent: the limit's own. */
export type Compared = { value: number; low?: number | undefined; high?: number | undefined; unit?: string | undefined }

export type Verdict = {
  limit: Limit
  /** What the code asks: the unrounded figure against the limit. */
  meets: boolean
  /** The figure in the limit's unit, unrounded. */
  value: number
  /** The chance that the true value meets the limit, 0 to 1; absent when the figure has no interval. */
  probability?: number
  /** Where the 95 % interval lies: wholly within the limit, across it, or wholly beyond; absent without an interval. */
  guarded?: 'below' | 'between' | 'above'
  sentences: Sentence[]
}

/** Converting and back leaves a few units of the last place; a code cannot mean those. */
const CONVERSION_NOISE = 1e-12

/**
 * A number in the limit's unit. A number that equals the limit but for the rounding of the conversion is the limit.
 *
 * @throws RangeError when the unit is not one of this quantity
 */
export function inUnitOf(limit: Limit, value: number, unit: string | undefined): number {
  if (unit === undefined || unit === limit.unit) return value
  const converted = convert(value, unit, limit.unit)
  return Math.abs(converted - limit.value) <= CONVERSION_NOISE * limit.value ? limit.value : converted
}

/**
 * Whether a number meets a limit, compared as it is.
 *
 * @param value in the limit's unit
 */
export const meets = (value: number, limit: Limit): boolean =>
  limit.comparison === '<' ? value < limit.value : value <= limit.value

/**
 * Compares a figure with a limit: simple acceptance as codes use it, and beside it the confidence that the 95 %
 * interval gives: `Phi((T - y) / u)`, u being the half of the interval on the limit's side over 1.96, and the guard band
 * of one half-width.
 *
 * Source: JCGM 106:2012, clauses 7 (probability of conformity, normal distribution) and 8 (guard bands); clause numbers
 * from memory.
 *
 * @param figure value and 95 % interval, in `unit` or else in the limit's unit
 * @throws RangeError when the value is not finite, when the interval does not hold it, or when the unit does not convert
 * @example
 * verdict({ value: 2.9, low: 2.6, high: 3.2, unit: '1/h' }, ownLimit('air-changes-50', 3, '1/h')).meets // true
 */
export function verdict(figure: Compared, limit: Limit): Verdict {
  const value = inUnitOf(limit, figure.value, figure.unit)
  if (!Number.isFinite(value)) throw new RangeError('verdict: the value is not a finite number')
  const simple = { limit, meets: meets(value, limit), value }
  if (figure.low === undefined || figure.high === undefined) {
    return { ...simple, sentences: verdictSentences(simple) }
  }

  const low = inUnitOf(limit, figure.low, figure.unit)
  const high = inUnitOf(limit, figure.high, figure.unit)
  if (!(low <= value && value <= high && Number.isFinite(low) && Number.isFinite(high))) {
    throw new RangeError('verdict: the interval does not hold the value')
  }
  const distance = limit.value - value
  const u = (distance >= 0 ? high - value : value - low) / NORMAL_975
  const full = {
    ...simple,
    probability: u > 0 ? normalDistribution(distance / u) : Number(simple.meets),
    guarded: meets(high, limit) ? ('below' as const) : meets(low, limit) ? ('between' as const) : ('above' as const),
  }
  return { ...full, sentences: verdictSentences(full) }
}
