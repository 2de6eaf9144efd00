/**
 * What the report and the texts of an entry rest on, as it was when the fill began. It is sealed with the entry, so what
 * stands here must fit for ever: fields are only added, as optional ones, and parts that other code defines are taken as
 * they came, without their schema of today.
 */
import * as z from 'zod/mini'
import { deviceSchema } from '../job/schema.ts'

const number = z.number()

/** A figure as it was computed: unrounded, with its 95 % limits and the parts of its uncertainty. */
const heldFigureSchema = z.looseObject({
  value: number,
  unit: z.string(),
  low: z.optional(number),
  high: z.optional(number),
})

/** The limit that the test was compared with: what is compared, with what, and where it stands. */
const heldLimitSchema = z.looseObject({ figure: z.string(), unit: z.string(), value: number })

const heldVerdictSchema = z.looseObject({
  outcome: z.enum(['meets', 'does not meet', 'withheld']),
  /** Every sentence that was said of it, in the language of that time. */
  sentences: z.array(z.looseObject({ code: z.string(), text: z.string() })),
})

const heldTestSchema = z.object({
  /** Id of the test in the readings. */
  test: z.string(),
  /** Its role, as form maps name it. */
  key: z.string(),
  /** The readings as numbers; absent when they gave none. */
  sheet: z.optional(z.looseObject({})),
  figures: z.record(z.string(), heldFigureSchema),
  fit: z.optional(z.looseObject({})),
  checks: z.array(z.looseObject({ id: z.string(), outcome: z.string(), text: z.string() })),
  limit: z.optional(heldLimitSchema),
  verdict: z.optional(heldVerdictSchema),
  /** What stands in the report of the test, written out. */
  page: z.looseObject({}),
})

export const basisSchema = z.object({
  /** Which form `page` has. */
  version: number,
  /** Version of the engine that computed it. */
  engine: z.string(),
  /** Language of what is written out. */
  language: z.string(),
  /** The devices that were used, with their ranges and the date of their calibration. */
  devices: z.array(deviceSchema),
  tests: z.array(heldTestSchema),
})

export type Basis = z.infer<typeof basisSchema>
export type HeldTest = z.infer<typeof heldTestSchema>
export type HeldFigure = z.infer<typeof heldFigureSchema>
