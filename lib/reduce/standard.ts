/** From the air that was in the leaks to standard conditions, 20 degC and 101,325 Pa. */
import type { Sheet } from '../sheet/schema.ts'
import { referenceDensity, referenceViscosity } from './air.ts'
import type { Air } from './flow.ts'

/**
 * Factor of the leakage coefficient. Source: ASTM E779 with viscosity (Roulet, Ventilation and Airflow in Buildings,
 * equation 4.15), also used for tests at one or two
 * pressures; ISO 9972 without (from memory).
 *
 * @param exponent of the leaks, 1
 * @returns 1 when no temperatures were given
 */
export function standardFactor(procedure: Sheet['procedure'], air: Air | undefined, exponent: number): number {
  if (!air) return 1
  const density = (air.leak / referenceDensity) ** (1 - exponent)
  if (procedure === 'iso-9972') return density
  return density * (air.leakViscosity / referenceViscosity) ** (2 * exponent - 1)
}

/**
 * How the logarithm of that factor changes with the exponent: what an uncertain exponent does to the air correction.
 *
 * @returns 0 when no temperatures were given
 */
export function standardSlope(procedure: Sheet['procedure'], air: Air | undefined): number {
  if (!air) return 0
  const density = -Math.log(air.leak / referenceDensity)
  return procedure === 'iso-9972' ? density : density + 2 * Math.log(air.leakViscosity / referenceViscosity)
}
