/** What a reviewer writes about a review file. */
import * as z from 'zod/mini'
import { findingSchema } from './entry-schema.ts'

const cell = z.string().check(z.maxLength(10_000))

export const reviewNotesSchema = z.object({
  reviewer: cell,
  /** Differences of a re-test up to `fine` percent are fine, those over `fault` percent a fault; as typed. */
  fine: cell,
  fault: cell,
  /** What a re-test gave, as typed, by `test/figure`, in the unit of the file's figure. */
  retest: z.record(z.string(), cell),
  findings: z.array(findingSchema).check(z.maxLength(1000)),
  /** When it was sent back; empty: not yet. */
  finished: z.string(),
})

export type ReviewNotes = z.infer<typeof reviewNotesSchema>
