/** Every message between popup, background and helper, checked on arrival. */
import * as z from 'zod/mini'
import { bounds } from '../bounds.ts'
import { filedSchema, fillSchema, givenFileSchema, themes } from '../book/schema.ts'
import { farMarkSchema, imageSchema } from '../form/page/image.ts'
import { materialSchema } from '../form/material.ts'
import { addressSchema, cluesSchema, formMapSchema, receiptLineSchema } from '../form/schema.ts'
import { suggestionSchema } from '../form/map/suggestion.ts'

/** The look that was chosen in the book; the browser's own where it is left out. */
const theme = z.optional(z.enum(themes))
/** Opens mapping on the page, with the map to go on with, if there is one. */
const mapSchema = z.object({ type: z.literal('map'), material: materialSchema, map: z.optional(formMapSchema), theme })
/** Shows the plan of a form map. */
const planSchema = z.object({ type: z.literal('plan'), material: materialSchema, map: formMapSchema, theme })

/** From the popup, the sidebar or the background to the helper in a tab. */
export const toHelperSchema = z.discriminatedUnion('type', [
  mapSchema,
  planSchema,
  /** What a frame of another origin shows now; from the background, which knows the frame. */
  z.object({ type: z.literal('frame'), frame: z.number(), address: addressSchema, images: z.array(imageSchema) }),
  /** To the copy in a frame: writes into one of its controls. */
  z.object({ type: z.literal('write'), key: z.string(), text: z.string() }),
  /** To the copy in a frame: the outlines to draw there, and whether a click chooses a control. */
  z.object({ type: z.literal('marks'), pick: z.boolean(), marks: z.array(farMarkSchema) }),
  /** The person chose a control in a frame; from the background, which knows the frame. */
  z.object({ type: z.literal('picked'), frame: z.number(), key: z.string() }),
  /** To the copies in frames: the helper of the page has closed. */
  z.object({ type: z.literal('end') }),
])

/** From the helper to the background, which keeps the book. */
export const toBackgroundSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('save-map'), map: formMapSchema }),
  z.object({
    type: z.literal('fill-started'),
    fill: z.extend(fillSchema, { job: materialSchema.shape.job }),
    files: z.optional(z.array(givenFileSchema)),
  }),
  z.object({ type: z.literal('fill-line'), fill: z.string(), line: receiptLineSchema }),
  z.object({ type: z.literal('fill-ended'), fill: z.string(), document: z.optional(filedSchema) }),
  /** Lines that the book did not take while they were written, or that the page has changed since. */
  z.object({
    type: z.literal('fill-late'),
    fill: z.extend(fillSchema, { job: materialSchema.shape.job }),
    lines: z.array(receiptLineSchema),
  }),
  z.object({ type: z.literal('open-book'), entry: z.optional(z.number()) }),
])

/** Between the helper of a page and its copies in frames, passed on by the background. */
export const fromFramesSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('frame'), images: z.array(imageSchema) }),
  z.object({ type: z.literal('frames-look') }),
  z.object({ type: z.literal('frames-end') }),
  z.object({ type: z.literal('frame-write'), frame: z.number(), key: z.string(), text: z.string() }),
  z.object({
    type: z.literal('frame-marks'),
    frame: z.number(),
    pick: z.boolean(),
    marks: z.array(farMarkSchema),
  }),
  z.object({ type: z.literal('frame-pick'), key: z.string() }),
  z.object({ type: z.literal('ask-frame'), origin: z.string().check(z.regex(/^https?:\/\/[^/?#\s]+$/)) }),
])

/** From the helper to the background: what the controls of a page may ask for. Nothing of the page but their clues. */
export const suggestSchema = z.object({
  type: z.literal('suggest'),
  clues: z.array(cluesSchema).check(z.maxLength(bounds.listed)),
  material: materialSchema,
})

/** From the helper to the background: a token for the dock that it opens. From the dock: whether a token is its tab's. */
export const dockSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('dock-opens') }),
  /** No frame can stand on the page: the dock is to open in a window of its own. */
  z.object({ type: z.literal('dock-apart') }),
  z.object({ type: z.literal('dock-joins'), token: z.string() }),
])

/** From the helper to the background: the writers of further kinds, for a control that is of another kind than when it was mapped. */
export const extraSchema = z.object({ type: z.literal('extra') })

/**
 * From the helper to the background: for as long as a fill runs the pointer meets everything on the page, so that what
 * lets it through covers as well as any other sheet.
 */
export const meetAllSchema = z.object({ type: z.literal('meet-all'), on: z.boolean() })

/** The suggestions of each control, in the same order. */
export const suggestedSchema = z.array(z.array(suggestionSchema))

export type MeetAll = z.infer<typeof meetAllSchema>
export type Extra = z.infer<typeof extraSchema>
export type DockAsks = z.infer<typeof dockSchema>
export type Suggest = z.infer<typeof suggestSchema>
export type ToHelper = z.infer<typeof toHelperSchema>
export type ToBackground = z.infer<typeof toBackgroundSchema>
export type FromFrames = z.infer<typeof fromFramesSchema>
