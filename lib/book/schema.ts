/** What the book keeps. Entries are only ever added. */
import * as z from 'zod/mini'
import { partsSchema } from '../form/schema.ts'
import { basisSchema } from './basis-schema.ts'
import { jobSchema, testerSchema, testSchema, typedSheetSchema, typedUnitsSchema } from '../job/schema.ts'

export const pageSchema = z.object({
  origin: z.string(),
  /** Without query and fragment: they may hold private tokens. */
  path: z.string(),
  title: z.string(),
})

const fileControl = { binding: z.string(), name: z.string(), type: z.string() }

/** What goes into a file control: words, or bytes in base 64. */
export const givenFileSchema = z.object({
  ...fileControl,
  text: z.optional(z.string()),
  bytes: z.optional(z.string()),
})

const savedFile = z.object({ name: z.string(), size: z.number(), sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)) })

/** A form that is a file: as it was opened, and the new file that holds what was filled in. `size` in bytes. */
export const filedSchema = z.object({ empty: savedFile, filled: savedFile })

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
  /** Which step of a form in several steps this fill is. */
  step: z.optional(z.object({ at: z.number(), of: z.number() })),
  /** Shared by the fills of one submission: those of its steps, and one that a reload cut in two. */
  series: z.optional(z.string()),
  /** Every binding of the plan, in its order, with the text that was to be entered. */
  planned: z.array(
    z.object({ binding: z.string(), control: z.string(), section: z.string(), source: z.string(), text: z.string() }),
  ),
  /** The files that were to be put into file controls. `size` in bytes. */
  files: z.optional(
    z.array(z.object({ ...fileControl, size: z.number(), sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)) })),
  ),
})

/** A fill that has not ended. */
export const openFillSchema = z.object({
  id: z.string(),
  fill: fillSchema,
  engine: z.string(),
  /** The browser tab it runs in, as far as known. */
  tab: z.optional(z.number()),
  /** Time of the latest line. */
  touched: z.string(),
  /** How many times a line was written. */
  count: z.number(),
  readings: z.optional(jobSchema),
  basis: z.optional(basisSchema),
})

export const themes = ['system', 'light', 'dark', 'contrast'] as const

export const settingsSchema = z.object({
  /** Copied into each new job. */
  tester: testerSchema,
  /** Units of a new job. */
  units: typedUnitsSchema,
  /** How the first test of a new job is set up, as far as it is set; `limit`: an id, of a kept limit behind `kept:`. */
  firstTest: z.optional(
    z.partial(
      z.object({
        procedure: typedSheetSchema.shape.procedure,
        stage: testSchema.shape.stage,
        limit: testSchema.shape.limit,
        device: typedSheetSchema.shape.device,
        pressurePercent: typedSheetSchema.shape.pressurePercent,
        flowPercent: typedSheetSchema.shape.flowPercent,
      }),
    ),
  ),
  /** What the calculator shows when it opens; empty when nothing was opened yet. */
  current: z.object({ job: z.string(), test: z.string() }),
  onboarded: z.boolean(),
  theme: z.enum(themes),
  /** Figures shown first, in this order, each with its decimals unless the usual ones are meant. Absent: none. */
  figures: z.optional(z.array(z.object({ id: z.string(), decimals: z.optional(z.number()) }))),
  /** The wording of the paragraph for a message; absent: the usual one. */
  paragraph: z.optional(partsSchema),
  /** When the whole book was last written to a file; empty: never. */
  backedUp: z.string(),
})

// oxlint-disable-next-line oxc/no-barrel-file -- types only: the popup, which needs these, must not carry the schemas
export type * from './entry-schema.ts'
export type Page = z.infer<typeof pageSchema>
export type GivenFile = z.infer<typeof givenFileSchema>
export type FiledDocument = z.infer<typeof filedSchema>
export type Fill = z.infer<typeof fillSchema>
export type OpenFill = z.infer<typeof openFillSchema>
export type Settings = z.infer<typeof settingsSchema>
