/** What the background answers to the helper; apart from the messages, for the popup needs none of it. */
import * as z from 'zod/mini'
import { writtenSchema } from '../form/page/image.ts'
import { suggestedSchema } from './messages.ts'

/** What the background answers to the helper. */
export const answerSchema = z.discriminatedUnion('ok', [
  z.object({ ok: z.literal(false), message: z.string() }),
  z.object({
    ok: z.literal(true),
    entry: z.optional(z.number()),
    map: z.optional(z.object({ id: z.string(), version: z.number() })),
    written: z.optional(writtenSchema),
    suggested: z.optional(suggestedSchema),
    /** Lets the frame of the dock join the helper of its tab, once. */
    token: z.optional(z.string()),
  }),
])

export type Answer = z.infer<typeof answerSchema>
