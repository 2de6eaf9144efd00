import { normalDistribution } from './normal.ts'

/** From here on the two distributions differ by less than 1e-6. */
const AS_NORMAL = 200_000

/**
 * The distribution function of Student's t for whole degrees of freedom: the share of the distribution that lies below t.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4: finite sums, exact but for
 * rounding.
 *
 * @param t a number of standard uncertainties; infinities are taken
 * @param freedom degrees of freedom, a whole number of at least 1
 * @returns a probability, 0 to 1
 * @throws RangeError when t is not a number or `freedom` is not a whole number above zero
 * @example
 * studentDistribution(2.776445105, 4).toFixed(4) // '0.9750'
 */
export function studentDistribution(t: number, freedom: number): number {
  if (Number.isNaN(t)) throw new RangeError('studentDistribution: t is not a number')
  if (!(freedom >= 1 && Number.isInteger(freedom))) {
    throw new RangeError('studentDistribution: the degrees of freedom are not a whole number above zero')
  }
  if (freedom > AS_NORMAL) return normalDistribution(t)
  if (!Number.isFinite(t)) return t > 0 ? 1 : 0
  const angle = Math.atan(t / Math.sqrt(freedom))
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
  const odd = freedom % 2
  // Even: 1 + c2/2 + 1·3/(2·4) c4 + …; odd: c + 2/3 c3 + 2·4/(3·5) c5 + …
  let term = odd ? cosine : 1
  let sum = freedom === 1 ? 0 : term
  for (let power = odd + 2; power <= freedom - 2; power += 2) {
    term *= ((power - 1) / power) * cosine * cosine
    sum += term
  }
  const between = odd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum
  return Math.min(1, Math.max(0, (1 + between) / 2))
}
