/** The short form of an entry, as it is kept. Made from the entry, and made again where it is damaged. */
import * as z from 'zod/mini'
import { outcomes } from '../form/schema.ts'
import { statuses } from './entry-schema.ts'
import { pageSchema } from './schema.ts'

const common = {
  number: z.number(),
  at: z.string(),
  job: z.object({ id: z.string(), name: z.string() }),
  hash: z.string(),
  /** Everything that is searched, folded. */
  text: z.string(),
}

const fillRowSchema = z.object({
  ...common,
  kind: z.enum(['fill', 'undo']),
  map: z.object({ id: z.string(), name: z.string(), version: z.number() }),
  page: pageSchema,
  /** Bindings by outcome; an outcome that did not occur is left out. */
  counts: z.partialRecord(z.enum(outcomes), z.number()),
  planned: z.number(),
  complete: z.boolean(),
  earlier: z.optional(z.number()),
  /** What became of the submission, by the follow-ups until now; an undo has none. */
  status: z.optional(z.enum(statuses)),
  confirmation: z.optional(z.string()),
  /** Only while something is still to be done. */
  due: z.optional(z.string()),
  keepUntil: z.optional(z.string()),
  /** The days of its tests, YYYY-MM-DD, the earliest first. */
  tested: z.optional(z.array(z.string())),
})

const noteRowSchema = z.object({
  ...common,
  kind: z.enum(['follow-up', 'correction', 'attachment', 'review']),
  of: z.optional(z.number()),
  /** What it says, in a few words. */
  words: z.string(),
})

export const rowSchema = z.discriminatedUnion('kind', [fillRowSchema, noteRowSchema])

export type FillRow = z.infer<typeof fillRowSchema>
export type NoteRow = z.infer<typeof noteRowSchema>
