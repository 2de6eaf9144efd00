/** The pressure that stands while the device is closed. */
import type { Sheet } from '../sheet/schema.ts'

export interface Baseline {
  /** Mean of the readings before, and after; left out when none were taken. Pa. */
  before?: number
  after?: number
  /** What is subtracted from every reading, Pa. */
  mean: number
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/**
 * The baseline of a sheet: the mean of the mean before and the mean after, or the only one of them there is, or 0.
 *
 * @example baselineOf({ before: [-1, -3], after: [-1] }).mean // -1.5
 */
export function baselineOf({ before, after }: Sheet['baseline']): Baseline {
  const means = {
    ...(before.length > 0 && { before: mean(before) }),
    ...(after.length > 0 && { after: mean(after) }),
  }
  const values = Object.values(means)
  return { ...means, mean: values.length > 0 ? mean(values) : 0 }
}

/**
 * Pressure difference across the leaks, positive in the direction of the test. Readings with a minus sign stand as
 * typed. Readings without one are taken as house minus outdoors, so that depressurizing makes them negative. The
 * baseline always stands as typed.
 *
 * @param reading Pa, as typed
 * @param baseline Pa
 * @returns Pa; zero or negative when the baseline is as large as the reading
 * @example corrected(50, -2, 'depressurize') // 48
 */
export function corrected(reading: number, baseline: number, direction: Sheet['direction']): number {
  if (reading < 0) return baseline - reading
  return direction === 'depressurize' ? reading + baseline : reading - baseline
}
