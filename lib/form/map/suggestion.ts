/** What the background says of a control that the helper asks about. */
import * as z from 'zod/mini'

export const suggestionSchema = z.object({
  /** Key of the item in the material. */
  item: z.string(),
  /** 0 to 1. */
  score: z.number(),
  /** Why, in words: `label and legend agree`. */
  reason: z.string(),
})

export type Suggestion = z.infer<typeof suggestionSchema>
