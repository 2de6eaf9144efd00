/** What certificates and common practice say of an instrument and of an assumed exponent. */
import type { Sheet } from '../sheet/schema.ts'

/** Used where the sheet gives none: common practice, no source. */
export const usualInstrument = { pressurePercent: 1, pressureFloor: 0.25, flowPercent: 5 }

/** Standard uncertainty of an assumed exponent where the sheet gives none: common practice, no source. */
export const usualExponentUncertainty = 0.05

/**
 * What the certificate gives as ±, as fractions: of flow, and of `pressure`. Taken as 95 % figures (coverage factor 2).
 *
 * @param pressure Pa
 * @example instrumentParts(undefined, 10) // { flow: 0.05, pressure: 0.025 }
 */
export function instrumentParts(instrument: Sheet['instrument'], pressure: number): { flow: number; pressure: number } {
  const { pressurePercent, pressureFloor, flowPercent } = instrument ?? usualInstrument
  return { flow: flowPercent / 100, pressure: Math.max(pressurePercent / 100, pressureFloor / pressure) }
}
