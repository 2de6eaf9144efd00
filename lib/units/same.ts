/** When two numbers count as one: what was typed decides a comparison, never the last bit of a double. */

/** Far above what arithmetic loses, far below what any instrument resolves. */
const NEAR = 1e-9

/**
 * On which side of a bound a number lies; a relative distance of less than 1e-9 of the bound counts as none. 80 cfm over
 * 2,000 ft2 is 4 cfm per 100 ft2, though a double makes 4.000000000000001 of it.
 *
 * @returns -1 below, 0 on the bound, 1 above; NaN when either is not a number
 * @example sideOf(4.000000000000001, 4) // 0
 */
export function sideOf(value: number, bound: number): number {
  const distance = value - bound
  return Math.abs(distance) <= NEAR * Math.abs(bound) ? 0 : Math.sign(distance)
}

/**
 * Whether a number keeps a bound: at most the bound, or less than it.
 *
 * @example keeps(4.000000000000001, 4, '<=') // true
 */
export function keeps(value: number, bound: number, comparison: '<=' | '<' = '<='): boolean {
  const side = sideOf(value, bound)
  return comparison === '<' ? side < 0 : side <= 0
}
