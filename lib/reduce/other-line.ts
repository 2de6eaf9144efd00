/** Of the two lines through the points of a regression, the one that is not the result. */
import type { Leak } from './leak.ts'

export interface OtherLine {
  exponent: number
  /** Its flow at a pressure over that of the result. */
  ratio(pressure: number): number
  /** A pressure, 4 Pa or that of the result, at which its flow lies outside the limits of the result. */
  outside: number | undefined
}

/**
 * @param target pressure of the result, Pa
 * @returns nothing when the test has no second line
 */
export function otherLine(leak: Leak, target: number): OtherLine | undefined {
  const { line, weighted, byWeights, standardSlope } = leak
  if (!line || !weighted) return undefined
  const [other, own] = byWeights ? [line, weighted] : [weighted, line]
  // The air correction is linear in the exponent, as a logarithm.
  const apart = (pressure: number) =>
    other.intercept - own.intercept + (other.slope - own.slope) * (Math.log(pressure) + standardSlope)
  return {
    exponent: other.slope,
    ratio: (pressure) => Math.exp(apart(pressure)),
    outside: [4, target].find((pressure) => Math.abs(apart(pressure)) > leak.uncertainty(pressure).half),
  }
}
