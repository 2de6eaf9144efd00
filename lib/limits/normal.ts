/**
 * The standard normal distribution function, Phi(z): the share of a normal distribution that lies below z.
 *
 * Taylor series about 0, term by term until it stops changing; good to about 1e-15 absolute.
 *
 * Source: G. Marsaglia, "Evaluating the Normal Distribution", Journal of Statistical Software 11(4), 2004.
 *
 * @param z a number of standard deviations; infinities are taken
 * @returns a probability, 0 to 1
 * @throws RangeError when z is not a number
 * @example
 * normalDistribution(0) // 0.5
 */
export function normalDistribution(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('normalDistribution: z is not a number')
  if (z > 8) return 1
  if (z < -8) return 0
  let sum = z
  let previous = 0
  let term = z
  for (let odd = 3; sum !== previous; odd += 2) {
    previous = sum
    term *= (z * z) / odd
    sum += term
  }
  const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)
  return Math.min(1, Math.max(0, 0.5 + sum * density))
}

/** The 97.5 % point of the normal distribution: half of a 95 % interval in standard uncertainties. */
export const NORMAL_975 = 1.959963984540054
