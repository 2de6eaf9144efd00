/** Coefficient and exponent from the readings, by the procedure of the sheet, before any air correction. */
import type { Sheet } from '../sheet/schema.ts'
import { SheetError } from './errors.ts'
import { type Line, fitLine } from './fit.ts'
import type { Reading } from './flow.ts'
import { baselineNoise, flowScatter } from './noise.ts'
import { type Scatter, type Station, scatterOf, stationAt } from './stations.ts'
import { type OrganicLine, wlocLine } from './wloc.ts'
import { say } from '../words/say.ts'

export interface Estimate {
  /** Assumed by a one-point test, else measured. */
  exponent: number
  assumed: boolean
  /** Of the flows as read, units.flow/Pa^n. */
  coefficientAsRead: number
  /** Of a regression: the line of least squares, also where the weighted one is the result. */
  line: Line | undefined
  /** Of a regression: the weighted line of organic correlation, where one goes through the points. */
  weighted?: OrganicLine | undefined
  /** Whether the weighted line is the result. */
  byWeights?: boolean
  /** Of a one-point test one, of a two-point test two, that near the higher pressure first; else none. */
  stations: (Station & { scatter: Scatter | undefined })[]
  /** How the logarithm of the flow at a pressure changes with that of each reading's flow; `x`: ln of the pressure. */
  shares(x: number): number[]
  /** How the exponent changes with the logarithm of each reading's flow. */
  slopeShares: readonly number[]
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

/** The readings of a station share its weight; the others have none. */
function spreadOver(count: number, stations: readonly Station[], shares: readonly number[]): number[] {
  const all = Array<number>(count).fill(0)
  stations.forEach(({ from }, index) => {
    for (const reading of from) all[reading] = shares[index]! / from.length
  })
  return all
}

function onePoint(sheet: Sheet, readings: readonly Reading[]): Estimate {
  const station = stationAt(readings, targetOf(sheet))!
  const exponent = assumedExponent(sheet)
  const shares = spreadOver(readings.length, [station], [1])
  return {
    exponent,
    assumed: true,
    coefficientAsRead: station.asRead / station.pressure ** exponent,
    line: undefined,
    stations: [{ ...station, scatter: scatterOf(station, readings, exponent) }],
    shares: () => shares,
    slopeShares: shares.map(() => 0),
  }
}

/** Shares of the two stations in the logarithm of the flow at a pressure; `x`: its ln. */
export function sharesAt(x: number, [high, low]: readonly Station[]): [high: number, low: number] {
  const share = (x - Math.log(low!.pressure)) / Math.log(high!.pressure / low!.pressure)
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

/** Two stations: `n = ln(Q1 / Q2) / ln(P1 / P2)`, `C = Q1 / P1^n`. Source: ASTM E1827 (from memory). */
function twoPoint(sheet: Sheet, readings: readonly Reading[]): Estimate {
  const pair = stationsOf(sheet, readings)
  const [high, low] = pair
  const span = Math.log(high.pressure / low.pressure)
  const exponent = Math.log(high.asRead / low.asRead) / span
  return {
    exponent,
    assumed: false,
    coefficientAsRead: high.asRead / high.pressure ** exponent,
    line: undefined,
    stations: pair.map((station) => ({ ...station, scatter: scatterOf(station, readings, exponent) })),
    shares: (x) => spreadOver(readings.length, pair, sharesAt(x, pair)),
    slopeShares: spreadOver(readings.length, pair, [1 / span, -1 / span]),
  }
}

export function noLine(): SheetError {
  const message = say`The points lie near no line: check every reading, and take pressures that lie further apart.`
  return new SheetError([{ path: ['points'], code: 'no line', message }])
}

/** The line by weights of what each point is uncertain by itself; nothing where none goes through the points. */
function weightedOf(sheet: Sheet, readings: readonly Reading[], exponent: number): OrganicLine | undefined {
  const scatter = baselineNoise(sheet).reading
  const uy = flowScatter(scatter, Math.abs(exponent), targetOf(sheet))
  try {
    return wlocLine(
      readings.map(({ pressure, asRead }) => ({
        x: Math.log(pressure),
        y: Math.log(asRead),
        ux: scatter / pressure,
        uy,
      })),
    )
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

function regression(sheet: Sheet, readings: readonly Reading[]): Estimate {
  const xs = readings.map(({ pressure }) => Math.log(pressure))
  const line = fitLine(
    xs,
    readings.map(({ asRead }) => Math.log(asRead)),
  )
  const weighted = weightedOf(sheet, readings, line.slope)
  const common = { assumed: false, line, weighted, stations: [] }
  if (sheet.line === 'weighted') {
    if (!weighted) throw noLine()
    const { slope, intercept, byY, share, meanX } = weighted
    return {
      ...common,
      byWeights: true,
      exponent: slope,
      coefficientAsRead: Math.exp(intercept),
      shares: (x) => share.map((one, index) => one + (x - meanX) * byY[index]!),
      slopeShares: byY,
    }
  }
  const slopeShares = xs.map((x) => (x - line.meanX) / line.sumSquares)
  return {
    ...common,
    exponent: line.slope,
    coefficientAsRead: Math.exp(line.intercept),
    shares: (x) => slopeShares.map((share) => 1 / line.count + (x - line.meanX) * share),
    slopeShares,
  }
}

/**
 * The estimate of a sheet.
 *
 * @throws SheetError when two stations lie near one pressure
 */
export function estimateOf(sheet: Sheet, readings: readonly Reading[]): Estimate {
  if (sheet.procedure === 'one-point') return onePoint(sheet, readings)
  return sheet.procedure === 'two-point' ? twoPoint(sheet, readings) : regression(sheet, readings)
}
