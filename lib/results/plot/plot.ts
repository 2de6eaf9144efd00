/** What the plot of a test shows and where, for a page as for a PDF: flow against pressure, both axes logarithmic. */
import type { Limit } from '../../limits/index.ts'
import type { Curve } from '../../reduce/curve.ts'
import { decimalsOf, usualFlow } from '../../reduce/figures/index.ts'
import type { Report } from '../../reduce/report.ts'
import type { Sheet } from '../../sheet/schema.ts'
import { symbol } from '../../units/symbol.ts'
import { halfUp } from '../lines.ts'
import { logScale } from './log-scale.ts'
import { say } from '../../words/say.ts'

export type Place = readonly [x: number, y: number]

/** Positions in a box of 400 by 272, downwards from its upper left corner. */
export const box = { width: 400, height: 272, left: 48, right: 388, top: 10, bottom: 238 } as const

/** A reading on the plot. */
export interface Mark {
  at: Place
  /** Its row among the typed ones, from 0. */
  row: number
  /** Across the leaks, Pa; through them at standard conditions, units.flow; off the line, percent. */
  pressure: number
  flow: number
  off: number
  /** Left out by the person: the line does not rest on it. */
  left: boolean
}

/** Rows of the points of a curve among the typed ones; in their order when left out. */
export interface Rows {
  points?: readonly number[]
  apart?: readonly number[]
}

export interface Plot {
  verticals: { x: number; text: string }[]
  horizontals: { y: number; text: string }[]
  /** Around the 95 % limits of the curve. */
  band: Place[]
  line: readonly [Place, Place]
  /** The other line through the points, where it lies outside the limits of the result. */
  other: readonly [Place, Place] | undefined
  marks: Mark[]
  /** The result at its pressure, with its interval. */
  result: { at: Place; low: number; high: number; text: string } | undefined
  limit: { at: Place; half: number; text: string } | undefined
  /** `Q = 59.5 ΔP^0.648`, in parts. */
  equation: { coefficient: string; exponent: string; detail: string; correlation: string }
  flowName: string
  pressureName: string
  /** All of it in a sentence. */
  words: string
}

const most = 300

const grouped = (value: number): string => value.toLocaleString('en-US', { maximumFractionDigits: 10 })

/** The flow that a limit comes to, when the limit is on a figure that grows as the flow does. */
function limitFlow(
  limit: Limit | undefined,
  { figures }: Report,
  curve: Curve,
): { pressure: number; flow: number } | undefined {
  const found = limit && figures[limit.figure]
  if (!limit || !found || found.unit !== limit.unit || !(found.value > 0)) return undefined
  const [, duct, at] = /^(?:(duct)-.*|(?:air-changes|flow)-(\d+)(?:-per-.*)?)$/.exec(limit.figure) ?? []
  const pressure = duct ? 25 : Number(at)
  return pressure > 0 ? { pressure, flow: (curve.at(pressure).flow * limit.value) / found.value } : undefined
}

const thinned = <T>(list: T[]): T[] =>
  list.length > most ? list.filter((_, at) => at % Math.ceil(list.length / most) === 0) : list

/** The plot of a test; nothing when there is no curve to draw. */
export function plotOf(
  sheet: Sheet,
  report: Report,
  curve: Curve,
  limit: Limit | undefined,
  rows: Rows = {},
): Plot | undefined {
  const reference = sheet.subject === 'ducts' ? 25 : 50
  const id = usualFlow(sheet.subject)
  const found = report.figures[id]
  const beyond = limitFlow(limit, report, curve)
  const drawn = [
    ...thinned(curve.points.map((point, at) => ({ ...point, row: rows.points?.[at] ?? at, left: false }))),
    ...thinned(curve.apart.map((point, at) => ({ ...point, row: rows.apart?.[at] ?? at, left: true }))),
  ].filter(({ pressure, flow }) => pressure > 0 && flow > 0)
  const pressures = [reference, ...drawn.map(({ pressure }) => pressure), ...(beyond ? [beyond.pressure] : [])]
  const from = Math.min(...pressures) / 1.25
  const to = Math.max(...pressures) * 1.2
  const [first, last] = [curve.at(from), curve.at(to)]
  const flows = [
    first.low,
    first.high,
    last.high,
    last.low,
    ...drawn.map(({ flow }) => flow),
    ...(beyond ? [beyond.flow] : []),
    ...(found ? [found.low ?? found.value, found.high ?? found.value] : []),
  ].filter((flow) => flow > 0 && Number.isFinite(flow))
  const x = logScale(from, to, box.left, box.right, 8)
  const y = logScale(Math.min(...flows) / 1.05, Math.max(...flows) * 1.1, box.bottom, box.top, 9)
  const place = (pressure: number, flow: number): Place => [x.at(pressure), y.at(Math.max(flow, y.from))]

  const steps = Array.from({ length: 25 }, (_, i) => from * (to / from) ** (i / 24))
  const upper = steps.map((pressure) => place(pressure, curve.at(pressure).high))
  const lower = steps.map((pressure) => place(pressure, curve.at(pressure).low))
  const band = [...upper, ...lower.toReversed()]
  if (![...band, place(from, first.flow)].flat().every(Number.isFinite)) return undefined

  const flowUnit = symbol(sheet.units.flow)
  const decimals = decimalsOf(id, sheet.units.flow)
  const margin =
    found?.low === undefined || found.high === undefined
      ? ''
      : say`, ${halfUp(found.low, decimals)} to ${halfUp(found.high, decimals)}`
  const { fit } = report
  const limitWords = beyond ? say`limit at ${beyond.pressure} Pa: ${halfUp(beyond.flow, decimals + 1)}` : ''
  return {
    verticals: x.ticks.map((tick) => ({ x: x.at(tick), text: grouped(tick) })),
    horizontals: y.ticks.map((tick) => ({ y: y.at(tick), text: grouped(tick) })),
    band,
    line: [place(from, first.flow), place(to, last.flow)],
    other: curve.other && [place(from, curve.other(from)), place(to, curve.other(to))],
    marks: drawn
      .map((one) => Object.assign(one, { at: place(one.pressure, one.flow) }))
      .toSorted((a, b) => a.row - b.row),
    result: found && {
      at: place(reference, found.value),
      low: y.at(found.low ?? found.value),
      high: y.at(found.high ?? found.value),
      text: `${halfUp(found.value, decimals)}${margin}`,
    },
    limit: beyond && { at: place(beyond.pressure, beyond.flow), half: 24, text: limitWords },
    equation: {
      coefficient: curve.coefficient.toPrecision(3),
      exponent: curve.exponent.toFixed(3),
      correlation: fit?.correlation.toFixed(4) ?? '',
      detail: fit
        ? say`r² ${fit.correlation.toFixed(4)}, n ${fit.exponentLow.toFixed(3)} to ${fit.exponentHigh.toFixed(3)}`
        : sheet.procedure === 'one-point'
          ? say`n assumed`
          : say`n from two pressures`,
    },
    flowName: say`leakage flow, ${flowUnit}`,
    pressureName: sheet.subject === 'ducts' ? say`pressure in the ducts` : say`pressure across the enclosure`,
    words: [
      say`Leakage flow against pressure, both axes logarithmic: ${curve.points.length === 1 ? say`1 point` : say`${curve.points.length} points`}, the curve and its 95 % band.`,
      found ? say`At ${reference} Pa ${`${halfUp(found.value, decimals)}${margin} ${flowUnit}`}.` : '',
      curve.other ? say`The dashed line is the other one through the points, outside the limits of the result.` : '',
      limitWords && `${limitWords.charAt(0).toUpperCase()}${limitWords.slice(1)} ${flowUnit}.`,
    ]
      .filter(Boolean)
      .join(' '),
  }
}
