/** From the air that was in the leaks to standard conditions, 20 degC and 101,325 Pa. */
import type { Sheet } from '../sheet/schema.ts'
import { referenceDensity, referenceViscosity } from './air.ts'
import type { Air } from './flow.ts'

/**
 * Factor of the leakage coefficient. Source: ASTM E779 with viscosity (Roulet, Ventilation and Airflow in Buildings,
 * equation 4.15), also used for one-point tests; ISO 9972 without (from memory).
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
