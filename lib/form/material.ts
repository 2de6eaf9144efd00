/**
 * What a form can be filled with: every figure and job field of one job, already computed, by id. The form code knows
 * only this; it knows neither air nor jobs.
 */
import * as z from 'zod/mini'

/** A number with its unit. `unit` is an id of lib/units; `decimals` is how many it is usually written with. */
const quantitySchema = z.object({
  kind: z.literal('quantity'),
  label: z.string(),
  /** Heading it is listed under: a test's role, 'building', 'tester'. */
  group: z.string(),
  value: z.number(),
  unit: z.string(),
  decimals: z.number(),
  /** The greatest number that meets the limit it is compared with; used to say when rounding flips the verdict. */
  limit: z.optional(z.number()),
  /** The job does not have it yet: `value` says nothing. */
  empty: z.optional(z.boolean()),
})

const textSchema = z.object({ kind: z.literal('text'), label: z.string(), group: z.string(), text: z.string() })

/** `iso`: YYYY-MM-DD. */
const dateSchema = z.object({ kind: z.literal('date'), label: z.string(), group: z.string(), iso: z.string() })

/** One of a known set of `options` (id and wording), or yes/no. */
const choiceSchema = z.object({
  kind: z.literal('choice'),
  label: z.string(),
  group: z.string(),
  value: z.string(),
  options: z.array(z.object({ value: z.string(), label: z.string() })),
  /** Why none is chosen, in a sentence. */
  why: z.optional(z.string()),
})

/**
 * A file of the job for a file control, such as the report of a test. `group`: what it is about, as with items; empty: the
 * whole job. `bytes`, in base 64, are there once it is made; `note` says what to know of it.
 */
const readyFileSchema = z.object({
  group: z.string(),
  name: z.string(),
  type: z.string(),
  bytes: z.optional(z.string()),
  note: z.optional(z.string()),
})

export const itemSchema = z.discriminatedUnion('kind', [quantitySchema, textSchema, dateSchema, choiceSchema])

/**
 * Keys: `job/<field>`, `tester/<field>`, `<role>/<figure id or test field>`, `<role>+<role>/<pair figure>`.
 * A role stands as typed, for example `after/flow-50`, `duct system 1/duct-flow-25`, `before+after/reduction-percent`.
 */
export const materialSchema = z.object({
  /** `readings`: job and devices as they were when this was worked out, in JSON, for the record of what comes of it. */
  job: z.object({ id: z.string(), name: z.string(), readings: z.optional(z.string()) }),
  items: z.record(z.string(), itemSchema),
  /** Keys: `report` (every test, a page each), `<role>/report`. */
  files: z.optional(z.record(z.string(), readyFileSchema)),
})

export type ReadyFile = z.infer<typeof readyFileSchema>
export type Item = z.infer<typeof itemSchema>
export type Quantity = z.infer<typeof quantitySchema>
export type Material = z.infer<typeof materialSchema>
