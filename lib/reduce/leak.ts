/** The leaks of one test: flow = coefficient × pressure^exponent, with its 95 % limits. */
import type { Sheet } from '../sheet/schema.ts'
import type { Uncertainty } from './budget.ts'
import { type Estimate, estimateOf, noLine } from './estimate.ts'
import type { Readings } from './flow.ts'
import { type Basis, scatterAlone } from './scatter-alone.ts'
import { standardFactor, standardSlope } from './standard.ts'
import { wholeBudget } from './whole-budget.ts'

export interface ReduceOptions {
  /** Adds the instrument's part to the limits of every figure but those of the fit itself. True when left out. */
  instrumentUncertainty?: boolean | undefined
  /** Multiplies a one-point result by 1.1, as some programs ask. False when left out. */
  onePointFactor?: boolean | undefined
  /** What each point is called in texts, when it was typed in another row than its place in the sheet: 1, 2, … when left out. */
  pointNumbers?: readonly number[] | undefined
}

export interface Leak extends Estimate {
  /** At standard conditions and with the one-point factor, if asked for; units.flow/Pa^n. */
  coefficient: number
  standard: number
  /** How the logarithm of `standard` changes with the exponent. */
  standardSlope: number
  /** 1.1 or 1. */
  factor: number
  /**
   * Of the flow at a pressure: as a fraction of it for a one-point test, else of its logarithm. `asRead`: before the air
   * correction, whose part that hangs on the exponent then does not count.
   */
  uncertainty(pressure: number, asRead?: boolean): Uncertainty
  /** Of the exponent itself, not as a fraction. */
  exponentUncertainty: Uncertainty
  limits(value: number, half: number): { low: number; high: number }
  /** What the whole budget rests on. */
  basis: Basis | undefined
}

export { targetOf } from './estimate.ts'

const about = (value: number, width: number) => ({ low: value * Math.max(0, 1 - width), high: value * (1 + width) })
const byLogarithm = (value: number, width: number) => ({ low: value * Math.exp(-width), high: value * Math.exp(width) })

/**
 * Coefficient and exponent of a sheet's leaks, and how sure they are.
 *
 * @throws SheetError when the points of a regression lie near no line, or those of two stations near one pressure
 */
export function leakOf(sheet: Sheet, all: Readings, options: ReduceOptions): Leak {
  const { readings, air, deviceFactor, balanceFactor } = all
  const { procedure } = sheet
  const slope = standardSlope(procedure, air)
  const found = estimateOf(sheet, readings)
  const factor = options.onePointFactor && procedure === 'one-point' && sheet.subject === 'enclosure' ? 1.1 : 1
  const standard = standardFactor(procedure, air, found.exponent)
  const unsure =
    options.instrumentUncertainty === false ? scatterAlone(sheet, found) : wholeBudget(sheet, readings, found)
  // Figures, limits, working and checks ask for the same few pressures.
  const worked = new Map<number, Uncertainty>()
  const leak: Leak = {
    ...found,
    coefficient: found.coefficientAsRead * deviceFactor * balanceFactor * standard * factor,
    standard,
    standardSlope: slope,
    factor,
    uncertainty: (pressure, asRead = false) => {
      const key = asRead ? -pressure : pressure
      const known = worked.get(key) ?? unsure.at(Math.log(pressure), asRead ? 0 : slope)
      worked.set(key, known)
      return known
    },
    exponentUncertainty: unsure.exponent,
    basis: unsure.basis,
    limits: found.assumed ? about : byLogarithm,
  }
  const wide = !found.assumed && [1, 75].some((pressure) => !(leak.uncertainty(pressure).half < 100))
  if (wide || !(Math.abs(found.exponent) < 10)) throw noLine()
  return leak
}
