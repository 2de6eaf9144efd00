/** What the book keeps of a fill. Entries are only ever added. */
import * as z from 'zod/mini'
import { receiptLineSchema } from '../form/schema.ts'

export const pageSchema = z.object({
  origin: z.string(),
  /** Without query and fragment: they may hold private tokens. */
  path: z.string(),
  title: z.string(),
})

/** A fill under way: written before the first control is touched, so that a crash in the middle leaves a trace. */
export const fillSchema = z.object({
  /** Unique; names the fill in the messages that follow. */
  id: z.string(),
  started: z.string(),
  /** 'undo': put back what was there before the fill named by `of`. */
  kind: z.enum(['fill', 'undo']),
  of: z.optional(z.string()),
  job: z.object({ id: z.string(), name: z.string() }),
  map: z.object({ id: z.string(), name: z.string(), version: z.number() }),
  page: pageSchema,
  /** Every binding of the plan, in its order, with the text that was to be entered. */
  planned: z.array(
    z.object({ binding: z.string(), control: z.string(), section: z.string(), source: z.string(), text: z.string() }),
  ),
})

export const entrySchema = z.extend(fillSchema, {
  /** 1, 2, 3, … in the order of adding. */
  number: z.number(),
  at: z.string(),
  lines: z.array(receiptLineSchema),
  /** False when the browser, the tab or the page ended before the fill did; `lines` then holds what was written. */
  complete: z.boolean(),
  engine: z.string(),
})

export type Page = z.infer<typeof pageSchema>
export type Fill = z.infer<typeof fillSchema>
export type Entry = z.infer<typeof entrySchema>
