/** Entries as they stand in the chain: a fill, or a note about another entry. */
import * as z from 'zod/mini'
import { receiptLineSchema } from '../form/schema.ts'
import { jobSchema } from '../job/schema.ts'
import { basisSchema } from './basis-schema.ts'
import { filedSchema, fillSchema } from './schema.ts'

/** What every entry has, whatever it is about. */
const sealed = {
  /** 1, 2, 3, … in the order of adding. */
  number: z.number(),
  at: z.string(),
  /** Version of the program that wrote it. */
  engine: z.string(),
  /** Id of the book it was written in; entries of earlier versions have none. */
  book: z.optional(z.string()),
  /** `hash` of the entry before it; empty for the first. */
  previous: z.string(),
  /** SHA-256, hexadecimal, of this entry's canonical JSON (RFC 8785) without `hash` itself. */
  hash: z.string(),
}

export const fillEntrySchema = z.extend(fillSchema, {
  ...sealed,
  lines: z.array(receiptLineSchema),
  /** False when the browser, the tab or the page ended before the fill did; `lines` then holds what was written. */
  complete: z.boolean(),
  /** How many lines were damaged before this entry was made of them: they are not among its own. */
  damaged: z.optional(z.number()),
  /** The job as it was typed when the texts were worked out: an audit asks for the readings behind the figures. */
  readings: z.optional(jobSchema),
  /** What was computed from them, and with what; entries of earlier versions have none. */
  basis: z.optional(basisSchema),
  /** Where the form is a file: the empty and the filled one. The lines were read back from the latter. */
  document: z.optional(filedSchema),
  /** Number of the latest earlier entry of the same job and form map, which this one corrects or repeats. */
  earlier: z.optional(z.number()),
})

const text = z.string().check(z.maxLength(10_000))
const isoDay = z.string().check(z.regex(/^(\d{4}-\d{2}-\d{2})?$/))
const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/))

/** An entry that is about another one, or about a job: `of` and `about` are the number and hash of that entry. */
const note = {
  id: z.string(),
  job: z.object({ id: z.string(), name: z.string() }),
  of: z.optional(z.number()),
  about: z.optional(hash),
  text,
}

export const statuses = ['draft', 'entered', 'submitted', 'accepted', 'rejected', 'resubmitted'] as const

/** What became of a submission. An empty field says nothing new; the latest follow-up that fills a field counts. */
export const followUpSchema = z.object({
  kind: z.literal('follow-up'),
  ...note,
  of: z.number(),
  about: hash,
  status: z.enum(statuses),
  /** Why it was rejected. */
  reason: text,
  /** The number that the office gave. */
  confirmation: text,
  /** Until when something is to be done, and until when the record is to be kept; YYYY-MM-DD or empty. */
  due: isoDay,
  keepUntil: isoDay,
  /** Number of the entry that was submitted in its place. */
  resubmittedAs: z.optional(z.number()),
})

/** Says that an entry is wrong, why, and what is right. The old entry stays as it is. */
export const correctionSchema = z.object({
  kind: z.literal('correction'),
  ...note,
  of: z.number(),
  about: hash,
  reason: text.check(z.minLength(1)),
})

export const fileSchema = z.object({ name: text, type: z.string(), size: z.number(), sha256: hash })

/** A photo or document; its bytes are kept once, under their hash. */
export const attachmentSchema = z.object({ kind: z.literal('attachment'), ...note, file: fileSchema })

export const findingSchema = z.object({
  /** What it is about, in words: `after: ACH50`, `entry 3: CFM at 50 Pa`, or the whole file. */
  about: text,
  weight: z.enum(['remark', 'to correct', 'fault']),
  text,
})

/** What a reviewer elsewhere found. */
export const reviewSchema = z.object({
  kind: z.literal('review'),
  ...note,
  reviewer: text,
  findings: z.array(findingSchema),
})

export const entrySchema = z.discriminatedUnion('kind', [
  fillEntrySchema,
  z.extend(followUpSchema, sealed),
  z.extend(correctionSchema, sealed),
  z.extend(attachmentSchema, sealed),
  z.extend(reviewSchema, sealed),
])

export type FillEntry = z.infer<typeof fillEntrySchema>
export type Entry = z.infer<typeof entrySchema>
export type NoteEntry = Exclude<Entry, FillEntry>
/** An entry about another one before it is numbered and sealed. */
export type Note =
  | z.infer<typeof followUpSchema>
  | z.infer<typeof correctionSchema>
  | z.infer<typeof attachmentSchema>
  | z.infer<typeof reviewSchema>
export type FollowUp = z.infer<typeof followUpSchema>
export type Attachment = z.infer<typeof attachmentSchema>
export type AttachmentEntry = Extract<Entry, { kind: 'attachment' }>
export type Finding = z.infer<typeof findingSchema>
export type Status = (typeof statuses)[number]
export type KeptFile = z.infer<typeof fileSchema>
