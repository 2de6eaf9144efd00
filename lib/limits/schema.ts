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
  /** In words, when it holds for some buildings or tests only. */
  condition: z.optional(z.string()),
  /** Ducts: the leakage it is written for; absent: either. */
  leakage: z.optional(z.enum(['total', 'outside'])),
  /** Ducts: the stages of the work it is written for; absent: any. */
  stages: z.optional(z.array(z.enum(['rough-in', 'rough-in without air handler', 'final', 'existing']))),
  /** Of value and clause together, the weaker. 'own': the user typed it. */
  confidence: z.enum(['read', 'from memory', 'own']),
  /** Year and month in which it was last looked at; empty for an own limit. */
  checked: z.string(),
  caution: z.string(),
})

export type Limit = z.infer<typeof limitSchema>
