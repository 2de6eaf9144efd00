/** A limit on a figure: what is compared, with what, where it stands, and how sure we are of it. */
import * as z from 'zod/mini'

export const limitSchema = z.object({
  /** 'own' for the user's own limit. */
  id: z.string(),
  title: z.string(),
  edition: z.string(),
  clause: z.string(),
  subject: z.enum(['enclosure', 'ducts']),
  /** The id of the figure that is compared. */
  figure: z.string(),
  /** The unit of `value`. */
  unit: z.string(),
  value: z.number(),
  comparison: z.enum(['<=', '<']),
  /** The climate zones it is written for, 0 to 8; absent: any. */
  climateZones: z.optional(z.array(z.int().check(z.gte(0), z.lte(8)))),
  /** In words, what no cell of a job tells: the path of the code, the kind of building. */
  condition: z.optional(z.string()),
  /** Ducts: the leakage it is written for; absent: either. */
  leakage: z.optional(z.enum(['total', 'outside'])),
  /** The stages of the work it is written for; absent: any. */
  stages: z.optional(z.array(z.enum(['rough-in', 'rough-in without air handler', 'final', 'existing']))),
  /** The procedures that its protocol takes; absent: any. */
  procedures: z.optional(z.array(z.enum(['one-point', 'two-point', 'astm-e779', 'iso-9972', 'astm-e3158']))),
  /** Tests in both directions are asked for: 'each' has to meet it by itself, or their 'mean' has to; absent: one will do. */
  directions: z.optional(z.enum(['each', 'mean'])),
  /** The volume it is set over, where the code says which: 'net' of walls and floors, or 'gross'. */
  volume: z.optional(z.enum(['net', 'gross'])),
  /** The buildings it is written for, by their air volume in m3: above `above`, and at most `most`. */
  size: z.optional(z.object({ above: z.optional(z.number()), most: z.optional(z.number()) })),
  /** Whether its protocol may ask for a one-point result to be multiplied by 1.1. */
  onePointFactor: z.optional(z.boolean()),
  /** Of value and clause together, the weaker. 'secondary': from texts that cite it. 'own': the user typed it. */
  confidence: z.enum(['read', 'secondary', 'from memory', 'own']),
  /** Year and month in which it was last looked at; empty for an own limit. */
  checked: z.string(),
  caution: z.string(),
})

/** What a limit is compared by and written for: all that it asks of a test but the number. */
export const limitTermsSchema = z.partial(
  z.pick(limitSchema, {
    comparison: true,
    climateZones: true,
    condition: true,
    leakage: true,
    stages: true,
    procedures: true,
    directions: true,
    volume: true,
    size: true,
  }),
)

export type LimitTerms = z.infer<typeof limitTermsSchema>
export type Limit = z.infer<typeof limitSchema>
