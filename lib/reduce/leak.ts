/** The leaks of one test: flow = coefficient × pressure^exponent, with its 95 % limits. */
import type { Sheet } from '../sheet/schema.ts'
import { SheetError } from './errors.ts'
import { type Line, errorAt, fitLine } from './fit.ts'
import type { Readings } from './flow.ts'
import { standardFactor } from './standard.ts'
import { studentT } from './student-t.ts'
import { exponentPart, instrumentPart, quadrature, usualExponentUncertainty } from './uncertainty.ts'

export interface ReduceOptions {
  /** Adds the instrument's part to the limits of every figure but those of the fit itself. True when left out. */
  instrumentUncertainty?: boolean | undefined
  /** Multiplies a one-point result by 1.1, as some programs ask. False when left out. */
  onePointFactor?: boolean | undefined
}

export interface Leak {
  exponent: number
  exponentHalf: number
  /** At standard conditions and with the one-point factor, if asked for; units.flow/Pa^n. */
  coefficient: number
  /** Of the flows as read, units.flow/Pa^n. */
  coefficientAsRead: number
  coefficientHalf: number
  standard: number
  /** 1.1 or 1. */
  factor: number
  line: Line | undefined
  /** Which reading a one-point test uses. */
  used: number | undefined
  /** Half-width of the flow at a pressure: of its logarithm when a line was fitted, of the flow itself otherwise. */
  half(pressure: number): number
  limits(value: number, half: number): { low: number; high: number }
}

/** The pressure a subject's result is given at, Pa. */
export function targetOf({ subject }: Pick<Sheet, 'subject'>): 25 | 50 {
  return subject === 'ducts' ? 25 : 50
}

/** The exponent that a one-point sheet assumes: common practice for houses 0.65 and for ducts 0.6. */
export function assumedExponent(sheet: Pick<Sheet, 'exponent' | 'subject'>): number {
  return sheet.exponent ?? (sheet.subject === 'ducts' ? 0.6 : 0.65)
}

/** Which reading a one-point test uses: the one nearest the target; of equals the first. */
export function nearest(readings: readonly { pressure: number }[], target: number): number {
  let best = 0
  let least = Infinity
  readings.forEach(({ pressure }, index) => {
    const away = Math.abs(pressure - target)
    if (away >= least) return
    least = away
    best = index
  })
  return best
}

function onePoint(
  sheet: Sheet,
  { readings, air, deviceFactor, balanceFactor }: Readings,
  options: ReduceOptions,
): Leak {
  const used = nearest(readings, targetOf(sheet))
  const { pressure, asRead } = readings[used]!
  const exponent = assumedExponent(sheet)
  const uncertainty = sheet.exponentUncertainty ?? usualExponentUncertainty
  const standard = standardFactor('one-point', air, exponent)
  const factor = options.onePointFactor && sheet.subject === 'enclosure' ? 1.1 : 1
  const coefficientAsRead = asRead / pressure ** exponent
  const half = (at: number) =>
    quadrature(
      options.instrumentUncertainty === false ? 0 : instrumentPart(sheet.instrument, exponent, pressure),
      exponentPart(uncertainty, pressure, at),
    )
  return {
    exponent,
    exponentHalf: 2 * uncertainty,
    coefficient: coefficientAsRead * deviceFactor * balanceFactor * standard * factor,
    coefficientAsRead,
    coefficientHalf: half(1),
    standard,
    factor,
    line: undefined,
    used,
    half,
    limits: (value, width) => ({ low: value * Math.max(0, 1 - width), high: value * (1 + width) }),
  }
}

function regression(sheet: Sheet, all: Readings, options: ReduceOptions): Leak {
  const { readings, air, deviceFactor, balanceFactor } = all
  const line = fitLine(
    readings.map(({ pressure }) => Math.log(pressure)),
    readings.map(({ asRead }) => Math.log(asRead)),
  )
  const t = studentT(line.count - 2)
  const exponent = line.slope
  const coefficientHalf = t * line.interceptError
  if (!(Math.abs(exponent) < 10 && coefficientHalf < 100)) {
    const message = 'The points lie near no line: check every reading, and take pressures that lie further apart.'
    throw new SheetError([{ path: ['points'], code: 'no line', message }])
  }
  const standard = standardFactor(sheet.procedure, air, exponent)
  const coefficientAsRead = Math.exp(line.intercept)
  return {
    exponent,
    exponentHalf: t * line.slopeError,
    coefficient: coefficientAsRead * deviceFactor * balanceFactor * standard,
    coefficientAsRead,
    coefficientHalf,
    standard,
    factor: 1,
    line,
    used: undefined,
    half: (at) =>
      quadrature(
        t * errorAt(line, Math.log(at)),
        options.instrumentUncertainty === false ? 0 : instrumentPart(sheet.instrument, exponent, at),
      ),
    limits: (value, width) => ({ low: value * Math.exp(-width), high: value * Math.exp(width) }),
  }
}

/**
 * Coefficient and exponent of a sheet's leaks.
 *
 * @throws SheetError when the points of a regression lie near no line
 */
export function leakOf(sheet: Sheet, readings: Readings, options: ReduceOptions): Leak {
  return sheet.procedure === 'one-point' ? onePoint(sheet, readings, options) : regression(sheet, readings, options)
}
