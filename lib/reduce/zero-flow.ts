/** Baseline readings above and below zero, averaged apart. */
import type { Sheet } from '../sheet/schema.ts'

export interface ZeroFlow {
  side: 'before' | 'after'
  /** Of the readings of one sign on one side of the test, Pa; never zero. */
  mean: number
  /** Whether every reading of that side has this sign. */
  all: boolean
}

/**
 * The means of the positive and of the negative baseline readings, before and after the test. Source: ISO 9972
 * (from memory).
 *
 * @example zeroFlows({ before: [3, -1, 5], after: [-2] }).map(({ mean }) => mean) // [4, -1, -2]
 */
export function zeroFlows(baseline: Sheet['baseline']): ZeroFlow[] {
  return (['before', 'after'] as const).flatMap((side) =>
    [1, -1].flatMap((sign) => {
      const readings = baseline[side].filter((reading) => reading * sign > 0)
      if (readings.length === 0) return []
      const mean = readings.reduce((sum, reading) => sum + reading / readings.length, 0)
      return [{ side, mean, all: readings.length === baseline[side].length }]
    }),
  )
}

/** The mean of one sign that lies furthest from zero; nothing when every reading is zero or none was taken. */
export function largestZeroFlow(baseline: Sheet['baseline']): ZeroFlow | undefined {
  return zeroFlows(baseline).toSorted((a, b) => Math.abs(b.mean) - Math.abs(a.mean))[0]
}
