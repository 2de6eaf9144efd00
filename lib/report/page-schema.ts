/**
 * What stands in a report as entries hold it. Entries stay for ever: a field is only added, as an optional one, and what
 * an older entry lacks is filled in by `contentOf`.
 */
import * as z from 'zod/mini'
import { pageVersion, type Page } from './write-page.ts'

const text = z.string()
const number = z.number()
const texts = z.array(text)
const outcome = z.enum(['good', 'doubtful', 'bad', 'not checked'])

const spanSchema = z.object({ value: number, low: number, high: number, limit: z.optional(number) })

const verdictSchema = z.looseObject({
  title: z.optional(text),
  value: text,
  margin: text,
  unit: text,
  interval: z.optional(z.extend(spanSchema, { mark: z.optional(text) })),
  drawn: text,
  verdict: z.optional(z.looseObject({ meets: z.boolean(), text })),
  likely: text,
  reach: text,
  notes: texts,
  source: text,
})

const place = z.tuple([number, number])

const plotSchema = z.object({
  verticals: z.array(z.object({ x: number, text })),
  horizontals: z.array(z.object({ y: number, text })),
  band: z.array(place),
  line: z.tuple([place, place]),
  marks: z.array(z.object({ at: place, row: number, pressure: number, flow: number, off: number, left: z.boolean() })),
  result: z.optional(z.object({ at: place, low: number, high: number, text })),
  limit: z.optional(z.object({ at: place, half: number, text })),
  equation: z.object({ coefficient: text, exponent: text, detail: text, correlation: text }),
  flowName: text,
  pressureName: text,
  words: text,
})

const barSchema = z.object({
  name: text,
  y: number,
  to: number,
  low: z.optional(number),
  high: z.optional(number),
  text,
})

const barsSchema = z.object({
  title: text,
  left: number,
  bars: z.tuple([barSchema, barSchema]),
  change: text,
  arrow: z.object({ from: number, to: number, y: number }),
  words: text,
})

/** A row of the table of figures; its working and budget are not in a report, and stand with the figures of the entry. */
const figureSchema = z.object({
  id: text,
  name: text,
  detail: text,
  value: text,
  margin: text,
  interval: text,
  unit: text,
  span: z.optional(z.extend(spanSchema, { limit: number })),
  note: text,
})

const pageSchema = z.looseObject({
  title: text,
  address: text,
  role: text,
  tested: text,
  facts: z.array(z.object({ label: text, value: text })),
  verdict: z.optional(verdictSchema),
  waiting: text,
  readings: z.object({ heads: z.array(z.tuple([text, text])), rows: z.array(texts), foot: texts }),
  plot: z.optional(plotSchema),
  bars: z.optional(barsSchema),
  figures: z.array(figureSchema),
  figuresNote: text,
  several: texts,
  zones: texts,
  /** Of entries that were sealed before it: absent. */
  notes: z.optional(texts),
  limitHead: text,
  checks: z.array(
    z.object({ id: text, outcome, text, name: text, found: z.optional(text), expected: z.optional(text) }),
  ),
  remarks: texts,
  cautions: text,
  signer: z.object({ name: text, licence: text }),
})

/** What an entry holds of a report, to be drawn; nothing when this version cannot. */
export function readPage(version: number, held: unknown): Page | undefined {
  const page = version === pageVersion ? pageSchema.safeParse(held).data : undefined
  if (!page) return undefined
  return {
    ...page,
    notes: page.notes ?? [],
    verdict: page.verdict,
    plot: page.plot && { ...page.plot, result: page.plot.result, limit: page.plot.limit },
    bars: page.bars as Page['bars'],
    figures: page.figures.map((line) => Object.assign(line, { steps: [] })),
  } as Page
}
