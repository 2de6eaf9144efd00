/** A budget: the named parts of an uncertainty and what they come to. Source: JCGM 100:2008, 5.1.2 and G.4. */
import type { BudgetPart, FigureValue } from './report.ts'
import { studentT } from './student-t.ts'
import { say } from '../words/say.ts'

/** What a part is called in data; {@link partWords} has the words. */
export type PartName = 'device' | 'gauge' | 'baseline' | 'drift' | 'wind' | 'exponent' | 'size'

/** One part: its standard uncertainty as a fraction of the figure, or of the figure's unit for an exponent. */
export interface Part {
  part: PartName
  u: number
  common: BudgetPart['common']
  /** Degrees of freedom of `u` where readings gave it; absent: known from a certificate or assumed. */
  freedom?: number | undefined
}

/** What parts come to. */
export interface Uncertainty {
  /** 95 % half-width. */
  half: number
  /** Standard uncertainty. */
  standard: number
  /** Effective degrees of freedom, a whole number; absent: so many that the coverage factor is 2. */
  freedom?: number | undefined
  /** Empty where only the scatter of a fit was asked for. */
  parts: readonly Part[]
}

/** Independent parts added as JCGM 100, 5.1.2, adds them. */
export function quadrature(...parts: number[]): number {
  return Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0))
}

/** What the rounding of sums leaves: it must decide nothing. */
const rounding = 1e-9

/** Smaller parts are none: their squares would lose their digits. */
const leastPart = 1e-100

/** Beyond this many degrees of freedom Student's factor is below 2. */
const mostFreedom = 60

/**
 * The coverage factor of 95 % limits: Student's t, but never below the 2 that certificates use.
 *
 * @param freedom a whole number; absent: as many as there can be
 * @example coverage(4).toFixed(4) // '2.7764'
 */
export function coverage(freedom: number | undefined): number {
  return freedom === undefined ? 2 : Math.max(2, studentT(freedom))
}

/**
 * Parts combined: standard uncertainties in quadrature, the half-width by the coverage factor of the effective degrees of
 * freedom (Welch and Satterthwaite). Parts from the same readings count with their sum. Source: JCGM 100, 5.1.2 and G.4.
 *
 * @example combined([{ part: 'device', u: 0.025, common: 'range' }]).half // 0.05
 */
export function combined(all: readonly Part[]): Uncertainty {
  let largest = leastPart
  for (const { u } of all) largest = Math.max(largest, u)
  const parts = all.filter(({ u }) => u > rounding * largest)
  let [variance, known, own] = [0, 0, Infinity]
  for (const { u, freedom } of parts) {
    variance += u * u
    if (freedom === undefined) continue
    known += u * u
    own = Math.min(own, freedom)
  }
  const standard = Math.sqrt(variance)
  if (known === 0) return { half: 2 * standard, standard, parts }
  const effective = Math.max(1, Math.floor(own * (standard ** 2 / known) ** 2 * (1 + rounding)))
  if (effective > mostFreedom) return { half: 2 * standard, standard, parts }
  return { half: coverage(effective) * standard, standard, freedom: effective, parts }
}

/**
 * The same with one part more, such as the size of the building.
 *
 * @param percent its ± at 95 %
 */
export function withSize(of: Uncertainty, percent: number): Uncertainty {
  if (percent === 0) return of
  const u = percent / 200
  if (of.parts.length > 0 || of.half === 0) return combined([...of.parts, { part: 'size', u, common: 'test' }])
  const standard = quadrature(of.standard, u)
  return { ...of, half: quadrature(of.half, 2 * u), standard }
}

/** The parts as a report has them, the largest first. `per`: what `u` is a fraction of; of next to nothing there are none. */
export function budgetOf({ parts, standard }: Uncertainty, per = 1): BudgetPart[] {
  const size = Math.abs(per)
  if (size < rounding) return []
  return parts
    .map(({ part, u, common }) => ({ part, u: u / size, share: (u / standard) ** 2, common }))
    .toSorted((one, other) => other.share - one.share)
}

type Sure = Pick<FigureValue, 'freedom' | 'factor' | 'budget'>

/** A budget with its shares worked out anew, the largest first. */
function shared(parts: readonly Omit<BudgetPart, 'share'>[]): BudgetPart[] {
  const variance = parts.reduce((sum, { u }) => sum + u * u, 0)
  return parts.map((part) => ({ ...part, share: part.u ** 2 / variance })).toSorted((a, b) => b.share - a.share)
}

/**
 * Budget, degrees of freedom and factor of values that are added or averaged as if their errors were the same: each part
 * is the mean of theirs by the size of the values, the degrees of freedom are the fewest.
 *
 * @param values of one figure, in one unit
 */
export function joined(values: readonly FigureValue[]): Sure {
  const whole = values.reduce((sum, { value }) => sum + value, 0)
  const parts = new Map<string, Omit<BudgetPart, 'share'>>()
  for (const { value, budget = [] } of values) {
    for (const { part, u, common } of budget) {
      const known = parts.get(part)?.u ?? 0
      parts.set(part, { part, common, u: known + (u * value) / whole })
    }
  }
  const freedoms = values.flatMap(({ freedom }) => freedom ?? [])
  const factors = new Set(values.map(({ factor }) => factor))
  const [factor] = factors
  const known = whole > 0 && values.every(({ budget }) => budget !== undefined)
  return {
    ...(freedoms.length > 0 && { freedom: Math.min(...freedoms) }),
    ...(factors.size === 1 && factor !== undefined && { factor }),
    ...(known && { budget: shared([...parts.values()]) }),
  }
}

/** The same when the size of the building joins in, `percent` its ± at 95 %. */
export function joinedBySize(of: Sure, percent: number): Sure {
  if (of.budget === undefined || percent === 0) return of
  return { ...of, budget: shared([...of.budget, { part: 'size', u: percent / 200, common: 'test' }]) }
}

const words: Record<PartName, string> = {
  device: say`the flow device`,
  gauge: say`the pressure gauge`,
  baseline: say`the baseline`,
  drift: say`the drift of the baseline`,
  wind: say`wind and the scatter of the readings`,
  exponent: say`the assumed exponent`,
  size: say`the size of the building`,
}

/** A part of a budget in words; a part that this version does not know, as it is called in the data. */
export const partWords = (part: string): string => (Object.hasOwn(words, part) ? words[part as PartName] : part)
