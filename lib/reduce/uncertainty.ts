/** 95 % half-widths, as fractions of a value. */
import type { Sheet } from '../sheet/schema.ts'

/** Used where the sheet gives none: common practice, no source. */
export const usualInstrument = { pressurePercent: 1, pressureFloor: 0.25, flowPercent: 5 }

/** Standard uncertainty of an assumed exponent where the sheet gives none: common practice, no source. */
export const usualExponentUncertainty = 0.05

/** Independent parts added as JCGM 100 (the GUM), 5.1.2, adds them. */
export function quadrature(...parts: number[]): number {
  return Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0))
}

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

/**
 * Half-width that the instrument alone gives to a flow at `pressure`.
 *
 * @param exponent of the leaks
 * @param pressure Pa
 * @example instrumentPart(undefined, 0.65, 50).toFixed(4) // '0.0504'
 */
export function instrumentPart(instrument: Sheet['instrument'], exponent: number, pressure: number): number {
  const parts = instrumentParts(instrument, pressure)
  return quadrature(parts.flow, exponent * parts.pressure)
}

/**
 * Half-width that an assumed exponent gives to a flow carried from `from` to `to`: twice the standard uncertainty.
 *
 * @param exponentUncertainty standard uncertainty of the exponent
 * @example exponentPart(0.05, 25, 50).toFixed(4) // '0.0693'
 */
export function exponentPart(exponentUncertainty: number, from: number, to: number): number {
  return 2 * exponentUncertainty * Math.abs(Math.log(to / from))
}
