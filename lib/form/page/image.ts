/** A control as a frame describes it to the page around it: plain data, checked on the way. */
import * as z from 'zod/mini'
import { looks } from '../looks.ts'
import { cluesSchema } from '../schema.ts'

export const imageSchema = z.object({
  /** Names the control for as long as the frame shows it. */
  key: z.string(),
  clues: cluesSchema,
  /** What it holds now, in the wording of a plan. */
  shown: z.string(),
  empty: z.boolean(),
  complaint: z.string(),
  /** What the control says of the way it wants a value: type, step, limits, placeholder. */
  attributes: z.array(z.tuple([z.string(), z.string()])),
})

/** Why a control was left alone or not set, and whether the page tried to submit the form at this: it was kept from it. */
export const writtenSchema = z.object({ reason: z.optional(z.string()), held: z.optional(z.boolean()) })

/** How a control of a frame is outlined there; known by the key of its image. */
export const farMarkSchema = z.object({ key: z.string(), look: z.enum(looks), tag: z.string() })

export type Image = z.infer<typeof imageSchema>
export type FarMark = z.infer<typeof farMarkSchema>
export type Written = z.infer<typeof writtenSchema>
