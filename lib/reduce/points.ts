/** What each point of a sheet comes to, for showing beside it. */
import type { Sheet } from '../sheet/schema.ts'
import { type ReduceOptions, targetOf } from './leak.ts'
import { parseSheet } from './parse.ts'
import { takeApart } from './reduce.ts'

export interface PointResult {
  /** Across the leaks, baseline-corrected, positive. Pa. */
  pressure: number
  /** Through the leaks, units.flow. */
  flow: number
  /** Flow at standard conditions brought to 50 Pa (ducts: 25 Pa) with the sheet's exponent, units.flow. */
  atReference: number
  /** Whether the result rests on it: every point of a regression, else those of the stations. */
  used: boolean
}

/**
 * The points of a sheet, corrected and brought to the pressure of the result.
 *
 * @throws SheetError as reduce does
 */
export function points(input: Sheet, options: ReduceOptions = {}): PointResult[] {
  return pointsOf(parseSheet(input), options)
}

/** {@link points} for a sheet whose form is known to be right. */
export function pointsOf(sheet: Sheet, options: ReduceOptions = {}): PointResult[] {
  const { readings, leak } = takeApart(sheet, options)
  const { exponent, standard, factor, line, stations } = leak
  const used = new Set(stations.flatMap(({ from }) => from))
  const target = targetOf(sheet)
  return readings.readings.map(({ pressure, flow }, index) => ({
    pressure,
    flow,
    atReference: flow * standard * factor * (target / pressure) ** exponent,
    used: line !== undefined || used.has(index),
  }))
}
