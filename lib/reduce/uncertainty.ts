/** 95 % half-widths, as fractions of a value. */
import type { Sheet } from '../sheet/schema.ts'
import { studentT } from './student-t.ts'

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

/** A part known from repeated readings: standard uncertainty and degrees of freedom. */
export interface Repeated {
  mean: number
  freedom: number
}

/**
 * Half-width from parts that are 95 % figures (coverage factor 2) and parts known from few repeats. With repeats the
 * coverage factor is Student's t of the effective degrees of freedom, but never below 2. Source: JCGM 100, 5.1.2 and G.4.
 *
 * @param parts half-widths as fractions
 * @example expanded([0.03, 0.04], []) // 0.05
 */
export function expanded(parts: readonly number[], repeated: readonly Repeated[]): number {
  const known = quadrature(...parts)
  const some = repeated.filter(({ mean }) => mean > 0)
  if (some.length === 0) return known
  const standard = quadrature(known / 2, ...some.map(({ mean }) => mean))
  const freedom = 1 / some.reduce((sum, { mean, freedom: own }) => sum + (mean / standard) ** 4 / own, 0)
  return Math.max(2, studentT(Math.max(1, Math.floor(freedom)))) * standard
}
