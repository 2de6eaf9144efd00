/** What comes out: figures, fit, checks and working. */
import * as z from 'zod/mini'

const number = z.number()
const text = z.string()

/**
 * One part of a figure's uncertainty: its relative standard uncertainty in the figure, its share of the variance (0 to 1),
 * and what has the error in common: every point of the test, every point of one range, or a single reading.
 */
export const budgetPartSchema = z.object({
  part: text,
  u: number,
  share: number,
  common: z.enum(['test', 'range', 'reading']),
})

/**
 * `value` is unrounded; `low` and `high` are its 95 % limits. `freedom`: the effective degrees of freedom of the limits, a
 * whole number; absent: the coverage factor is 2. `factor`: what a program's factor multiplied value and limits by, when
 * it is not 1. `budget`: the parts of the uncertainty, the largest first.
 */
export const figureValueSchema = z.object({
  value: number,
  unit: text,
  low: z.optional(number),
  high: z.optional(number),
  freedom: z.optional(number),
  factor: z.optional(number),
  budget: z.optional(z.array(budgetPartSchema)),
  note: z.optional(text),
})

/** `coefficient` at standard conditions, units.flow/Pa^n; `correlation` is r squared; limits 95 %, of the fit alone. */
export const fitSchema = z.object({
  coefficient: number,
  exponent: number,
  correlation: number,
  exponentLow: number,
  exponentHigh: number,
  coefficientLow: number,
  coefficientHigh: number,
  points: number,
})

export const outcomes = ['good', 'doubtful', 'bad', 'not checked'] as const

export const checkSchema = z.object({
  id: text,
  outcome: z.enum(outcomes),
  text,
  found: z.optional(text),
  expected: z.optional(text),
})

/** One step a reader can repeat with a hand calculator. `for`: ids of the figures it leads to. */
export const stepSchema = z.object({
  step: text,
  formula: text,
  values: text,
  result: text,
  source: text,
  for: z.array(text),
})

export const reportSchema = z.object({
  figures: z.record(text, figureValueSchema),
  fit: z.optional(fitSchema),
  checks: z.array(checkSchema),
  working: z.array(stepSchema),
})

export type BudgetPart = z.infer<typeof budgetPartSchema>
export type FigureValue = z.infer<typeof figureValueSchema>
export type Fit = z.infer<typeof fitSchema>
export type CheckResult = z.infer<typeof checkSchema>
export type Step = z.infer<typeof stepSchema>
/** A step before it is known what it leads to. `air`: only figures at standard conditions rest on it. */
export type ChainStep = Omit<Step, 'for'> & { air?: true }
export type Report = z.infer<typeof reportSchema>
