/** From what was read to the flow through the leaks. */
import type { Point, Sheet } from '../sheet/schema.ts'
import { convert } from '../units/convert.ts'
import { densityAt, densityByBarometer, referenceDensity, viscosity } from './air.ts'
import { airInEffect } from './threshold.ts'
import { type Baseline, baselineOf, corrected } from './baseline.ts'

/** Air as the test met it. Densities in kg/m3. */
export interface Air {
  indoor: number
  outdoor: number
  /** What passes the device: indoor air when depressurizing, outdoor air when pressurizing. */
  device: number
  /** What passes the leaks: outdoor air when depressurizing, indoor air when pressurizing. */
  leak: number
  /** Viscosity of the air in the leaks, Pa s. */
  leakViscosity: number
}

/** One reading, corrected. Flows in units.flow, pressures in Pa. */
export interface Reading {
  /** What the point is called in texts: 1, 2, … or the row it was typed in. */
  number: number
  /** Baseline-corrected, positive. */
  pressure: number
  /** As the instrument shows it, or through the range in use. */
  asRead: number
  /** Through the leaks, at the density of the leak air. */
  flow: number
}

export interface Readings {
  baseline: Baseline
  air: Air | undefined
  /** Indicated to actual flow. */
  deviceFactor: number
  /** Flow through the device to flow through the leaks: the same mass of air. */
  balanceFactor: number
  readings: Reading[]
}

/** Densities of the air that is in effect, or nothing when none is. A barometer reading stands before an elevation. */
function airOf(sheet: Sheet): Air | undefined {
  const { units, direction } = sheet
  const air = airInEffect(sheet)
  if (!air) return undefined
  const celsius = (temperature: number) => convert(temperature, units.temperature, 'degC')
  const density = (temperature: number) =>
    air.barometer === undefined
      ? densityAt(celsius(temperature), convert(air.elevation ?? 0, units.length, 'm'))
      : densityByBarometer(celsius(temperature), air.barometer)
  const indoor = density(air.indoor)
  const outdoor = density(air.outdoor)
  return direction === 'depressurize'
    ? { indoor, outdoor, device: indoor, leak: outdoor, leakViscosity: viscosity(celsius(air.outdoor)) }
    : { indoor, outdoor, device: outdoor, leak: indoor, leakViscosity: viscosity(celsius(air.indoor)) }
}

/**
 * Flow of a point as the instrument gives it: shown, or `coefficient × pressure^exponent` of the range in use.
 *
 * @returns units.flow
 */
function flowAsRead(point: Point, device: Sheet['device']): number {
  if ('flow' in point) return point.flow
  const { coefficient, exponent } = device!.ranges[point.range]!
  return coefficient * Math.abs(point.devicePressure) ** exponent
}

/**
 * Every point of a sheet, corrected for the baseline and for the density of the air.
 * Source: physics of an orifice (indicated to actual flow) and conservation of mass; ASTM E779, ISO 9972 (from memory).
 *
 * @param numbers what each point is called; 1, 2, … when left out
 */
export function readingsOf(sheet: Sheet, numbers: readonly number[] = []): Readings {
  const baseline = baselineOf(sheet.baseline)
  const air = airOf(sheet)
  const calibration = sheet.device?.calibrationDensity ?? referenceDensity
  const deviceFactor = air && sheet.flowBasis === 'indicated' ? Math.sqrt(calibration / air.device) : 1
  const balanceFactor = air ? air.device / air.leak : 1
  const readings = sheet.points.map((point, index) => {
    const asRead = flowAsRead(point, sheet.device)
    return {
      number: numbers[index] ?? index + 1,
      pressure: corrected(point.pressure, baseline.mean, sheet.direction),
      asRead,
      flow: asRead * deviceFactor * balanceFactor,
    }
  })
  return { baseline, air, deviceFactor, balanceFactor, readings }
}
