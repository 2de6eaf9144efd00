/** A book of somebody else, or of an own other browser, that is kept beside one's own to be read. */
import * as z from 'zod/mini'

const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/))

export const otherBookSchema = z.object({
  /** A random name of its tables; it says nothing of whose book it is. */
  key: z.string().check(z.regex(/^[0-9a-f-]{1,64}$/)),
  /** What the person calls it. */
  name: z.string().check(z.minLength(1), z.maxLength(200)),
  /** Id of the book that its newest entry was written in; empty where its version kept none. */
  book: z.string(),
  /** How many entries it has, and the hash of the newest, as they were taken in. */
  count: z.number(),
  hash,
  /** Up to this entry it is the same as one's own book, where these entries are listed already. */
  shared: z.number(),
  /** Which entries came out of which file, and when. */
  takenIn: z.array(z.object({ from: z.number(), to: z.number(), at: z.string(), file: z.string() })),
  /** Its id on the shelf, and the public key that its segments were first seen to be signed with. */
  onShelf: z.optional(z.object({ book: z.string(), key: z.string() })),
  /** Since when it is put away: kept, and in no list. */
  putAway: z.optional(z.string()),
  /** How many of its entries were left when the loss of the others was told. */
  left: z.optional(z.number()),
})

export type OtherBook = z.infer<typeof otherBookSchema>
