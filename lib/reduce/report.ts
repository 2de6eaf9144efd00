/** What comes out: figures, fit, checks and working. */
import * as z from 'zod/mini'

const number = z.number()
const text = z.string()

/** `value` is unrounded; `low` and `high` are its 95 % limits. */
export const figureValueSchema = z.object({
  value: number,
  unit: text,
  low: z.optional(number),
  high: z.optional(number),
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

export type FigureValue = z.infer<typeof figureValueSchema>
export type Fit = z.infer<typeof fitSchema>
export type CheckResult = z.infer<typeof checkSchema>
export type Step = z.infer<typeof stepSchema>
/** A step before it is known what it leads to. `air`: only figures at standard conditions rest on it. */
export type ChainStep = Omit<Step, 'for'> & { air?: true }
export type Report = z.infer<typeof reportSchema>
