/** The 97.5 % point of Student's t, for two-sided 95 % limits. */

/** For 1 to 20 degrees of freedom, computed with @stdlib/stats-base-dists-t-quantile. */
const table = [
  12.70620474, 4.30265273, 3.182446305, 2.776445105, 2.570581836, 2.446911851, 2.364624252, 2.306004135, 2.262157163,
  2.228138852, 2.20098516, 2.17881283, 2.160368656, 2.144786688, 2.131449546, 2.119905299, 2.109815578, 2.10092204,
  2.093024054, 2.085963447,
] as const

/** Of the normal distribution. */
const x = 1.959963984540054

/** Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5: factors of 1/df, 1/df2, … */
const terms = [
  (x ** 3 + x) / 4,
  (5 * x ** 5 + 16 * x ** 3 + 3 * x) / 96,
  (3 * x ** 7 + 19 * x ** 5 + 17 * x ** 3 - 15 * x) / 384,
  (79 * x ** 9 + 776 * x ** 7 + 1482 * x ** 5 - 1920 * x ** 3 - 945 * x) / 92160,
] as const

/**
 * The value that Student's t stays below with a probability of 97.5 %. Right to 1 in 10 million.
 *
 * @param df degrees of freedom, a whole number of at least 1
 * @example studentT(4).toFixed(4) // '2.7764'
 */
export function studentT(df: number): number {
  return table[df - 1] ?? terms.reduce((sum, term, index) => sum + term / df ** (index + 1), x)
}
