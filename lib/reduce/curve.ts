/** Flow against pressure, for drawing: the points, and what they come to at any pressure. */
import type { Point, Sheet } from '../sheet/schema.ts'
import { type Reading, readingsOf } from './flow.ts'
import { type ReduceOptions, targetOf } from './leak.ts'
import { otherLine } from './other-line.ts'
import { takeApart } from './reduce.ts'

export interface CurvePoint {
  /** Across the leaks, Pa. */
  pressure: number
  /** Through the leaks at standard conditions, units.flow. */
  flow: number
  /** How far it lies from the curve, percent of the curve. */
  off: number
}

export interface Curve {
  exponent: number
  /** units.flow/Pa^n at standard conditions. */
  coefficient: number
  points: CurvePoint[]
  /** Points of the same test that the curve does not rest on. */
  apart: CurvePoint[]
  /** The flow at a pressure with its 95 % limits, units.flow. */
  at(pressure: number): { flow: number; low: number; high: number }
  /** The flow by the other line through the points, where it lies outside the limits of the result: units.flow. */
  other: ((pressure: number) => number) | undefined
}

/**
 * The curve `flow = coefficient × pressure^exponent` of a sheet. The limits of a regression are those of the fit alone
 * (its scatter); one or two points show no scatter, so theirs are with the instrument's part and the exponent's.
 * Source of the limits: ASTM E779 Annex A1, ISO 9972 Annex C (from memory).
 *
 * @param sheet a sheet whose form is known to be right
 * @param apart readings of the same test that are not in the sheet, to be drawn beside the curve
 * @throws SheetError with one issue for each cell that stands in the way
 */
export function curveOf(sheet: Sheet, options: ReduceOptions = {}, apart: Point[] = []): Curve {
  const whole = takeApart(sheet, options)
  const { readings, leak } = whole.leak.line ? takeApart(sheet, { ...options, instrumentUncertainty: false }) : whole
  const { exponent, coefficient, standard, factor } = leak
  const second = otherLine(whole.leak, targetOf(sheet))
  const at = (pressure: number) => {
    const flow = coefficient * pressure ** exponent
    return { flow, ...leak.limits(flow, leak.uncertainty(pressure).half) }
  }
  const drawn = ({ pressure, flow }: Reading): CurvePoint => {
    const standardFlow = flow * standard * factor
    return { pressure, flow: standardFlow, off: 100 * (standardFlow / at(pressure).flow - 1) }
  }
  return {
    exponent,
    coefficient,
    points: readings.readings.map(drawn),
    apart: readingsOf({ ...sheet, points: apart }).readings.map(drawn),
    at,
    other: second?.outside === undefined ? undefined : (pressure) => at(pressure).flow * second.ratio(pressure),
  }
}
