/** Whether flows are corrected for the air. */
import type { Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'

/** Beyond either, flows are corrected for the air: ANSI/RESNET/ICC 380 (from memory). */
export const thresholds = { elevation: 5000, difference: 30 } as const

/** Station pressure at the elevation of the threshold in the standard atmosphere, Pa; the form of ASTM E779 (from memory). */
const thresholdBarometer = 101_325 * (1 - (0.0065 * convert(thresholds.elevation, 'ft', 'm')) / 293) ** 5.2553

/** Less than any gauge shows; takes up the rounding of a conversion. */
const noise = 1e-9

/**
 * The air that a sheet is corrected for, if it is. With `corrections: 'threshold'` that is the case above 5,000 ft (or
 * below the barometer that stands for it) or where the temperatures differ by more than 30 degF: either brings both
 * corrections. Source: ANSI/RESNET/ICC 380 (from memory).
 *
 * @example airInEffect({ units: { flow: 'cfm', temperature: 'degF', length: 'ft' }, air: { indoor: 68, outdoor: 41 }, corrections: 'threshold' }) // undefined
 */
export function airInEffect({ air, units, corrections }: Pick<Sheet, 'air' | 'units' | 'corrections'>): Sheet['air'] {
  if (!air || corrections !== 'threshold') return air
  const [indoor, outdoor] = [air.indoor, air.outdoor].map((value) => convert(value, units.temperature, 'degF'))
  const altitude =
    air.barometer === undefined
      ? convert(air.elevation ?? 0, units.length, 'ft') > thresholds.elevation + noise
      : air.barometer < thresholdBarometer - noise
  return altitude || Math.abs(indoor! - outdoor!) > thresholds.difference + noise ? air : undefined
}
