/** Every message between popup, background and helper, checked on arrival. */
import * as z from 'zod/mini'
import { fillSchema } from './book/schema.ts'
import { materialSchema } from './form/material.ts'
import { formMapSchema, receiptLineSchema } from './form/schema.ts'

/** From the popup or sidebar to the helper in a tab. */
export const toHelperSchema = z.discriminatedUnion('type', [
  /** Opens mapping on the page, with the map to go on with, if there is one. */
  z.object({ type: z.literal('map'), material: materialSchema, map: z.optional(formMapSchema) }),
  /** Shows the plan of a form map. */
  z.object({ type: z.literal('plan'), material: materialSchema, map: formMapSchema }),
])

/** From the helper to the background, which keeps the book. */
export const toBackgroundSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('save-map'), map: formMapSchema }),
  z.object({ type: z.literal('fill-started'), fill: fillSchema }),
  z.object({ type: z.literal('fill-line'), fill: z.string(), line: receiptLineSchema }),
  z.object({ type: z.literal('fill-ended'), fill: z.string() }),
  z.object({ type: z.literal('open-book'), entry: z.optional(z.number()) }),
])

export type ToHelper = z.infer<typeof toHelperSchema>
export type ToBackground = z.infer<typeof toBackgroundSchema>
