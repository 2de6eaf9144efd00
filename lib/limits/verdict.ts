import { studentT } from '../reduce/student-t.ts'
import { convert } from '../units/convert.ts'
import { keeps, sideOf } from '../units/same.ts'
import { normalDistribution } from './normal.ts'
import { instead } from './pick.ts'
import type { Limit } from './schema.ts'
import { fitOf, type Scope, whyNot } from './scope.ts'
import { studentDistribution } from './student.ts'
import { verdictSentences, withheldSentence, type Sentence } from './words.ts'

/**
 * A figure as a report gives it. `unit` absent: the limit's own. `freedom`: degrees of freedom of the 95 % limits; absent:
 * the coverage factor is 2 and the distribution normal. `factor`: what value and limits were multiplied by after the test.
 */
export type Compared = {
  value: number
  low?: number | undefined
  high?: number | undefined
  unit?: string | undefined
  freedom?: number | undefined
  factor?: number | undefined
}

export type Verdict = {
  limit: Limit
  /** What the code asks: the unrounded figure against the limit. */
  meets: boolean
  /** The figure in the limit's unit, unrounded; the limit itself where the two are equal within 1e-9. */
  value: number
  /** The figure before the factor that a program multiplies by; absent without one. */
  unadjusted?: number
  /** The chance that the true value of the building meets the limit, 0 to 1; absent when the figure has no interval. */
  probability?: number
  /**
   * Where the 95 % interval of the building's true value lies: wholly within the limit, across it, or wholly beyond; absent
   * without an interval.
   */
  guarded?: 'below' | 'between' | 'above'
  /** What the limit is written for and the test does not say: the verdict holds only then. */
  unsaid: string[]
  sentences: Sentence[]
}

/** No verdict: the limit is not written for the test. */
export type Withheld = { limit: Limit; withheld: string; instead?: Limit }

/**
 * A number in the limit's unit. A number that equals the limit within 1e-9 is the limit.
 *
 * @throws RangeError when the unit is not one of this quantity
 */
export function inUnitOf(limit: Limit, value: number, unit: string | undefined): number {
  const converted = unit === undefined ? value : convert(value, unit, limit.unit)
  return sideOf(converted, limit.value) === 0 ? limit.value : converted
}

/**
 * Whether a number meets a limit, compared unrounded; within 1e-9 of the limit it is the limit.
 *
 * @param value in the limit's unit
 */
export const meets = (value: number, limit: Limit): boolean => keeps(value, limit.value, limit.comparison)

/** What is believed of the building: the chance that it meets the limit, and on which side its interval lies. */
function belief(limit: Limit, [value, low, high]: readonly [number, number, number], freedom: number | undefined) {
  const distance = limit.value - value
  const k = freedom === undefined ? 2 : Math.max(2, studentT(freedom))
  const u = (distance >= 0 ? high - value : value - low) / k
  const below = (z: number) => (freedom === undefined ? normalDistribution(z) : studentDistribution(z, freedom))
  return {
    probability: u > 0 ? below(distance / u) : Number(meets(value, limit)),
    guarded: meets(high, limit) ? ('below' as const) : meets(low, limit) ? ('between' as const) : ('above' as const),
  }
}

/**
 * Compares a figure with a limit: simple acceptance as codes use it, and beside it the confidence that the 95 % interval
 * gives. The chance is `F((T - y) / u)`, where F is the distribution that the interval is from (Student's t with its degrees
 * of freedom, or the normal one), and u the half of the interval on the limit's side over its coverage factor (the 97.5 %
 * point of F, at least 2). The guard band is one half-width, an expanded uncertainty. A factor that a program multiplies by
 * changes what is compared, not what is believed of the building: chance and guard band are of the figure before it.
 *
 * Source: JCGM 106:2012, clauses 7 (probability of conformity) and 8 (guard bands); JCGM 100:2008, annex G (Student's t);
 * clause numbers from memory.
 *
 * @param figure value and 95 % interval, in `unit` or else in the limit's unit
 * @param scope what is known of the test; where the limit is not written for it there is no verdict but the reason
 * @throws RangeError when the value is not finite, when the interval does not hold it, or when the unit does not convert
 * @example
 * verdict({ value: 2.9, low: 2.6, high: 3.2, unit: '1/h' }, ownLimit('air-changes-50', 3, '1/h')).meets // true
 * verdict({ value: 2.9 }, publishedLimit('iecc-2021-ducts-total')!, { subject: 'ducts', leakage: 'outside' }) // { withheld: 'No verdict. The limit “IECC 2021, …' }
 */
export function verdict(figure: Compared, limit: Limit): Verdict
export function verdict(figure: Compared, limit: Limit, scope: Scope | undefined): Verdict | Withheld
export function verdict(figure: Compared, limit: Limit, scope: Scope = {}): Verdict | Withheld {
  const reason = whyNot(limit, scope)
  if (reason !== undefined) {
    const other = instead(limit, scope)
    return { limit, withheld: withheldSentence(reason, other), ...(other && { instead: other }) }
  }
  const { unit, factor = 1, freedom } = figure
  const value = inUnitOf(limit, figure.value, unit)
  if (!Number.isFinite(value)) throw new RangeError('verdict: the value is not a finite number')
  const simple = {
    limit,
    meets: meets(value, limit),
    value,
    ...(factor !== 1 && { unadjusted: inUnitOf(limit, figure.value / factor, unit) }),
    unsaid: fitOf(limit, scope).unsaid,
  }
  if (figure.low === undefined || figure.high === undefined) {
    return { ...simple, sentences: verdictSentences(simple) }
  }
  const [low, high] = [figure.low, figure.high].map((end) => inUnitOf(limit, end / factor, unit)) as [number, number]
  const measured = simple.unadjusted ?? value
  if (!(low <= measured && measured <= high && Number.isFinite(low) && Number.isFinite(high))) {
    throw new RangeError('verdict: the interval does not hold the value')
  }
  const full = { ...simple, ...belief(limit, [measured, low, high], freedom) }
  return { ...full, sentences: verdictSentences(full) }
}
