/** What is shown of a test's results, in the reader's language: plain data for every place that shows it. */
import type { BudgetPart, FigureValue } from '../reduce/report.ts'
import type { Span } from './scale.ts'

/** A step of the working of a figure. */
export interface Step {
  step: string
  formula: string
  values: string
  result: string
  source: string
}

export type CheckOutcome = 'good' | 'doubtful' | 'bad' | 'not checked'

/** A figure as written for reading. */
export interface FigureLine {
  id: string
  /** `CFM50` */
  name: string
  /** What tells it from others of the same name: `as read`. May be empty. */
  detail: string
  value: string
  /** Half the 95 % interval, or empty. */
  margin: string
  /** What the interval is when its halves differ, in words. */
  interval: string
  unit: string
  /** The interval against the limit that this figure is compared with. */
  span?: Span
  note: string
  steps: readonly Step[]
  /** Parts of the uncertainty, the largest first. */
  budget?: readonly BudgetPart[]
  /** Unrounded, for another rounding than the usual one. */
  found?: FigureValue
}

export interface FigureGroup {
  title: string
  lines: readonly FigureLine[]
}

export interface VerdictProps {
  /** What it is the verdict of, where it is not the one test that is open. */
  title?: string
  /** `2.86` */
  value: string
  margin: string
  /** `ACH50` or a unit. */
  unit: string
  /** Unrounded, for the drawing. */
  interval?: { value: number; low: number; high: number; limit?: number | undefined; mark?: string } | undefined
  /** The interval in words, for those who do not see the drawing. */
  drawn: string
  /** The verdict, when there is a limit: `Meets the limit, 3.0`. */
  verdict?: { meets: boolean; text: string } | undefined
  /** Why there is no verdict: the limit chosen is not for the test. */
  withheld?: string
  /** How likely, then where the interval reaches. */
  likely: string
  reach: string
  /** Which part of the uncertainty is the largest. */
  mostly: string
  /** Further sentences: what rounding does, what is applied. */
  notes: readonly string[]
  /** The clause, and whose edition counts. */
  source: string
  /** Goes to the choice of a limit; used while there is none. */
  onLimit?: () => void
}

export interface CheckLine {
  id: string
  outcome: CheckOutcome
  text: string
  found?: string | undefined
  expected?: string | undefined
}
