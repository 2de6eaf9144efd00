import { write } from '../units/write.ts'
import type { Limit } from './schema.ts'
import { inUnitOf, meets } from './verdict.ts'
import { flipSentence } from './words.ts'

export type Flip = {
  /** The number as it will be written. */
  rounded: string
  /** Whether the rounded number meets the limit; the unrounded one does the opposite. */
  roundedMeets: boolean
  sentence: string
}

/**
 * Says when the number as it will be written gives another verdict than the number itself: 3.004 misses a limit of 3,
 * its two-decimal form 3.00 would meet it.
 *
 * @param value unrounded, in `unit`, or else in the limit's unit
 * @param decimals how many are written
 * @param rounding what happens to a half
 * @param unit the unit that is written; the limit's when absent
 * @returns the flip, or undefined when rounding changes nothing
 * @throws RangeError when the value is not finite or the unit does not convert
 * @example
 * roundingFlips(3.004, ownLimit('air-changes-50', 3, '1/h'), 2, 'half-up')?.rounded // '3.00'
 */
export function roundingFlips(
  value: number,
  limit: Limit,
  decimals: number,
  rounding: 'half-up' | 'half-even',
  unit: string = limit.unit,
): Flip | undefined {
  const rounded = write(value, { decimals, rounding })
  const exactMeets = meets(inUnitOf(limit, value, unit), limit)
  const roundedMeets = meets(inUnitOf(limit, Number(rounded), unit), limit)
  if (roundedMeets === exactMeets) return undefined
  return { rounded, roundedMeets, sentence: flipSentence({ value, unit, rounded, roundedMeets, limit }) }
}
