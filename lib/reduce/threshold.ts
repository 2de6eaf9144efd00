/** Which corrections for the air apply. */
import type { Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'

/** Beyond these a correction applies: ANSI/RESNET/ICC 380 (from memory). */
export const thresholds = { elevation: 5000, difference: 30 } as const

/** Station pressure at the elevation of the threshold in the standard atmosphere, Pa; the form of ASTM E779 (from memory). */
const thresholdBarometer = 101_325 * (1 - (0.0065 * convert(thresholds.elevation, 'ft', 'm')) / 293) ** 5.2553

/** Less than any gauge shows; takes up the rounding of a conversion. */
const noise = 1e-9

export interface AirInEffect {
  /** What the corrections are computed from; left out when none applies. */
  air?: NonNullable<Sheet['air']>
  altitude: boolean
  temperature: boolean
}

/**
 * The air that a sheet is corrected for. With `corrections: 'threshold'` the elevation (or the barometer) counts only
 * above 5,000 ft and the temperatures only when they differ by more than 30 degF; what does not count stands at sea level
 * and at 20 degC. Source: ANSI/RESNET/ICC 380 (from memory).
 *
 * @example airInEffect({ units: { flow: 'cfm', temperature: 'degF', length: 'ft' }, air: { indoor: 68, outdoor: 41 }, corrections: 'threshold' }) // { altitude: false, temperature: false }
 */
export function airInEffect({ air, units, corrections }: Pick<Sheet, 'air' | 'units' | 'corrections'>): AirInEffect {
  if (!air) return { altitude: false, temperature: false }
  if (corrections !== 'threshold') return { air, altitude: true, temperature: true }
  const [indoor, outdoor] = [air.indoor, air.outdoor].map((value) => convert(value, units.temperature, 'degF'))
  const temperature = Math.abs(indoor! - outdoor!) > thresholds.difference + noise
  const altitude =
    air.barometer === undefined
      ? convert(air.elevation ?? 0, units.length, 'ft') > thresholds.elevation + noise
      : air.barometer < thresholdBarometer - noise
  if (!temperature && !altitude) return { altitude, temperature }
  const { indoor: inside, outdoor: outside, ...place } = air
  const standard = convert(20, 'degC', units.temperature)
  return {
    air: {
      ...(temperature ? { indoor: inside, outdoor: outside } : { indoor: standard, outdoor: standard }),
      ...(altitude && place),
    },
    altitude,
    temperature,
  }
}
