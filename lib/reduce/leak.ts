/** The leaks of one test: flow = coefficient × pressure^exponent, with its 95 % limits. */
import type { Sheet } from '../sheet/schema.ts'
import { SheetError } from './errors.ts'
import { type Line, errorAt, fitLine } from './fit.ts'
import type { Reading, Readings } from './flow.ts'
import { standardFactor, standardSlope } from './standard.ts'
import { type Scatter, type Station, scatterOf, stationAt } from './stations.ts'
import { studentT } from './student-t.ts'
import { expanded, instrumentPart, quadrature, usualExponentUncertainty } from './uncertainty.ts'
import { say } from '../words/say.ts'

export interface ReduceOptions {
  /** Adds the instrument's part to the limits of every figure but those of the fit itself. True when left out. */
  instrumentUncertainty?: boolean | undefined
  /** Multiplies a one-point result by 1.1, as some programs ask. False when left out. */
  onePointFactor?: boolean | undefined
  /** What each point is called in texts, when it was typed in another row than its place in the sheet: 1, 2, … when left out. */
  pointNumbers?: readonly number[] | undefined
}

export interface Leak {
  /** Assumed by a one-point test, else measured. */
  exponent: number
  assumed: boolean
  exponentHalf: number
  /** At standard conditions and with the one-point factor, if asked for; units.flow/Pa^n. */
  coefficient: number
  /** Of the flows as read, units.flow/Pa^n. */
  coefficientAsRead: number
  coefficientHalf: number
  standard: number
  /** How the logarithm of `standard` changes with the exponent. */
  standardSlope: number
  /** 1.1 or 1. */
  factor: number
  /** Of a regression. */
  line: Line | undefined
  /** Of a one-point test one, of a two-point test two, that near the higher pressure first; else none. */
  stations: (Station & { scatter: Scatter | undefined })[]
  /**
   * Half-width of the flow at a pressure: of the flow itself for a one-point test, else of its logarithm.
   * `asRead`: before the air correction, whose part that hangs on the exponent then does not count.
   */
  half(pressure: number, asRead?: boolean): number
  limits(value: number, half: number): { low: number; high: number }
}

/** The pressure a subject's result is given at, Pa. */
export function targetOf({ subject }: Pick<Sheet, 'subject'>): 25 | 50 {
  return subject === 'ducts' ? 25 : 50
}

/** The exponent that a one-point sheet assumes: common practice for houses 0.65 and for ducts 0.6. */
function assumedExponent(sheet: Pick<Sheet, 'exponent' | 'subject'>): number {
  return sheet.exponent ?? (sheet.subject === 'ducts' ? 0.6 : 0.65)
}

/** Where the lower station of a two-point test lies, as a share of the target: 12.5 Pa for 50, ASTM E1827 (from memory). */
export const lowerShare = 0.25

const alone = ({ instrumentUncertainty }: ReduceOptions) => instrumentUncertainty === false

const about = (value: number, width: number) => ({ low: value * Math.max(0, 1 - width), high: value * (1 + width) })
const byLogarithm = (value: number, width: number) => ({ low: value * Math.exp(-width), high: value * Math.exp(width) })

/** What is found before the flows are corrected for the air. */
type Found = Omit<Leak, 'coefficient' | 'standard' | 'standardSlope'>

/** `slope`: how the logarithm of the air correction changes with the exponent. */
function onePoint(sheet: Sheet, readings: readonly Reading[], slope: number, options: ReduceOptions): Found {
  const station = stationAt(readings, targetOf(sheet))!
  const { pressure, asRead } = station
  const exponent = assumedExponent(sheet)
  const scatter = scatterOf(station, readings, exponent)
  const uncertainty = sheet.exponentUncertainty ?? usualExponentUncertainty
  const factor = options.onePointFactor && sheet.subject === 'enclosure' ? 1.1 : 1
  const coefficientAsRead = asRead / pressure ** exponent
  const instrument = alone(options) ? 0 : instrumentPart(sheet.instrument, exponent, pressure)
  const half = (at: number, raw = false) =>
    expanded(
      [instrument, 2 * uncertainty * Math.abs(Math.log(at / pressure) + (raw ? 0 : slope))],
      scatter ? [scatter] : [],
    )
  return {
    exponent,
    assumed: true,
    exponentHalf: 2 * uncertainty,
    coefficientAsRead,
    coefficientHalf: half(1),
    factor,
    line: undefined,
    stations: [{ ...station, scatter }],
    half,
    limits: about,
  }
}

/** Shares of the two stations in the logarithm of the flow at a pressure. */
export function sharesAt(at: number, [high, low]: readonly Station[]): [high: number, low: number] {
  const share = Math.log(at / low!.pressure) / Math.log(high!.pressure / low!.pressure)
  return [share, 1 - share]
}

function stationsOf(sheet: Sheet, readings: readonly Reading[]): [Station, Station] {
  const target = targetOf(sheet)
  const one = stationAt(readings, target)!
  const other = stationAt(readings, lowerShare * target, one.from)
  if (!other) {
    const message = say`Points are all near one pressure: take them near ${target} Pa and near ${lowerShare * target} Pa, or choose the one-point procedure.`
    throw new SheetError([{ path: ['points'], code: 'same pressure', message }])
  }
  return one.pressure >= other.pressure ? [one, other] : [other, one]
}

/**
 * Two stations: `n = ln(Q1 / Q2) / ln(P1 / P2)`, `C = Q1 / P1^n`. Source: ASTM E1827 (from memory). Half-widths by
 * propagation (JCGM 100, 5.1.2) with the readings of the two stations taken as independent.
 */
function twoPoint(sheet: Sheet, readings: readonly Reading[], slope: number, options: ReduceOptions): Found {
  const pair = stationsOf(sheet, readings)
  const [high, low] = pair
  const span = Math.log(high.pressure / low.pressure)
  const exponent = Math.log(high.asRead / low.asRead) / span
  const stations = pair.map((station) => ({ ...station, scatter: scatterOf(station, readings, exponent) }))
  const parts = pair.map(({ pressure }) => (alone(options) ? 0 : instrumentPart(sheet.instrument, exponent, pressure)))
  const combined = (shares: readonly number[]) =>
    expanded(
      shares.map((share, index) => share * parts[index]!),
      stations.flatMap(({ scatter }, index) =>
        scatter ? [{ mean: Math.abs(shares[index]! * scatter.mean), freedom: scatter.freedom }] : [],
      ),
    )
  const half = (at: number, raw = false) => combined(sharesAt(raw ? at : at * Math.exp(slope), pair))
  const coefficientHalf = half(1)
  if (!(Math.abs(exponent) < 10 && coefficientHalf < 100 && half(75) < 100)) throw noLine()
  const coefficientAsRead = high.asRead / high.pressure ** exponent
  return {
    exponent,
    assumed: false,
    exponentHalf: combined([1 / span, -1 / span]),
    coefficientAsRead,
    coefficientHalf,
    factor: 1,
    line: undefined,
    stations,
    half,
    limits: byLogarithm,
  }
}

function noLine(): SheetError {
  const message = say`The points lie near no line: check every reading, and take pressures that lie further apart.`
  return new SheetError([{ path: ['points'], code: 'no line', message }])
}

function regression(sheet: Sheet, readings: readonly Reading[], options: ReduceOptions): Found {
  const line = fitLine(
    readings.map(({ pressure }) => Math.log(pressure)),
    readings.map(({ asRead }) => Math.log(asRead)),
  )
  const t = studentT(line.count - 2)
  const exponent = line.slope
  const coefficientHalf = t * line.interceptError
  if (!(Math.abs(exponent) < 10 && coefficientHalf < 100)) throw noLine()
  return {
    exponent,
    assumed: false,
    exponentHalf: t * line.slopeError,
    coefficientAsRead: Math.exp(line.intercept),
    coefficientHalf,
    factor: 1,
    line,
    stations: [],
    half: (at) =>
      quadrature(t * errorAt(line, Math.log(at)), alone(options) ? 0 : instrumentPart(sheet.instrument, exponent, at)),
    limits: byLogarithm,
  }
}

/**
 * Coefficient and exponent of a sheet's leaks.
 *
 * @throws SheetError when the points of a regression lie near no line, or those of two stations near one pressure
 */
export function leakOf(sheet: Sheet, all: Readings, options: ReduceOptions): Leak {
  const { readings, air, deviceFactor, balanceFactor } = all
  const { procedure } = sheet
  const slope = standardSlope(procedure, air)
  const found =
    procedure === 'one-point'
      ? onePoint(sheet, readings, slope, options)
      : procedure === 'two-point'
        ? twoPoint(sheet, readings, slope, options)
        : regression(sheet, readings, options)
  const standard = standardFactor(procedure, air, found.exponent)
  return {
    ...found,
    coefficient: found.coefficientAsRead * deviceFactor * balanceFactor * standard * found.factor,
    standard,
    standardSlope: slope,
  }
}
