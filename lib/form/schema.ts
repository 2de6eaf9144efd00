/** Form maps, plans and receipts: the plain data that the form code passes on. */
import * as z from 'zod/mini'
import { controlKinds } from './control-kinds.ts'

export type { ControlKind } from './control-kinds.ts'

/**
 * Independent clues by which a control is found again. All are texts as the page shows them, except `attributes`
 * (stable ones only: name, id, autocomplete, data-*; generated ids are left out).
 */
export const cluesSchema = z.object({
  kind: z.enum(controlKinds),
  /** Accessible name. For a radio group: the group's name. */
  name: z.string(),
  /** Nearest legend or heading above the control. */
  section: z.string(),
  attributes: z.record(z.string(), z.string()),
  placeholder: z.string(),
  /** Labels of the options of a select, list or radio group, at most 50. */
  options: z.array(z.string()),
  /** Index among the controls of the same kind on the page when it was mapped. */
  position: z.number(),
  /** Names of the elements whose shadow roots hold the control, the outermost first; left out in the plain page. */
  shadow: z.optional(z.array(z.string())),
  /** The frame that holds the control; left out for the page itself. */
  frame: z.optional(z.object({ origin: z.string(), path: z.string() })),
})

/** How a value is written. What does not apply to the item's kind is left out. */
export const writeSchema = z.object({
  unit: z.optional(z.string()),
  decimals: z.optional(z.number()),
  rounding: z.optional(z.enum(['half-up', 'half-even'])),
  /** Thousands separator. */
  grouping: z.optional(z.enum(['', ',', '.', ' ', "'"])),
  /** Decimal mark. */
  mark: z.optional(z.enum(['.', ','])),
  /** Pattern of Unicode TR 35 fields: yyyy MM dd M d, for example `MM/dd/yyyy`. */
  date: z.optional(z.string()),
  /** For a choice into a select, radio group or checkbox: which option of the page stands for which value. */
  choices: z.optional(z.record(z.string(), z.string())),
})

/** Words with figures between them. */
export const partsSchema = z.array(
  z.union([z.object({ text: z.string() }), z.object({ item: z.string(), write: writeSchema })]),
)

/** What goes into a control: an item of the material, fixed text, words with figures between them, or a file. */
export const sourceSchema = z.discriminatedUnion('from', [
  z.object({ from: z.literal('item'), item: z.string(), write: writeSchema }),
  z.object({ from: z.literal('text'), text: z.string() }),
  z.object({ from: z.literal('words'), parts: partsSchema }),
  z.object({
    from: z.literal('file'),
    name: z.string(),
    type: z.string(),
    /** What the file holds: words, bytes in base 64, or a file of the material. None: a table of all figures as CSV. */
    text: z.optional(z.string()),
    bytes: z.optional(z.string()),
    item: z.optional(z.string()),
  }),
])

/** `step`: which step of a form in several steps shows the control; 1 when left out, as in maps of earlier versions. */
export const bindingSchema = z.object({
  id: z.string(),
  control: cluesSchema,
  source: sourceSchema,
  step: z.optional(z.number()),
})

/** `path` is matched segment by segment; `*` stands for one segment, a last `**` for any rest. No query, no fragment. */
export const addressSchema = z.object({ origin: z.string(), path: z.string() })

export const formMapSchema = z.object({
  id: z.string(),
  name: z.string(),
  version: z.number(),
  created: z.string(),
  updated: z.string(),
  address: addressSchema,
  /** Addresses of later steps that do not fit the first one. */
  further: z.optional(z.array(addressSchema)),
  bindings: z.array(bindingSchema),
})

/** What the plan says of a binding before anything is typed. */
export const planLineSchema = z.object({
  binding: z.string(),
  /** The control's name and section, as the page shows them now (or as mapped, when it is not found). */
  control: z.string(),
  section: z.string(),
  /** Where the text comes from, in words: `after: CFM50`. */
  source: z.string(),
  /** Text to enter; for a select or radio group the option's label; for a checkbox `checked` or `not checked`. */
  text: z.string(),
  /** What is there now, in the same wording. */
  now: z.string(),
  state: z.enum(['to enter', 'will replace', 'already there', 'not found', 'ambiguous', 'refused']),
  /** Why, or what to know: rounding that flips a verdict, what is missing. */
  note: z.string(),
})

export const outcomes = ['entered', 'differs', 'not found', 'refused', 'ambiguous'] as const

export const receiptLineSchema = z.object({
  binding: z.string(),
  control: z.string(),
  section: z.string(),
  source: z.string(),
  /** Text that was to be entered. */
  intended: z.string(),
  /** What stood there before. */
  before: z.string(),
  /** What the control held when read back after the page settled. */
  readBack: z.string(),
  outcome: z.enum(outcomes),
  note: z.string(),
})

export type Clues = z.infer<typeof cluesSchema>
export type Write = z.infer<typeof writeSchema>
export type Source = z.infer<typeof sourceSchema>
export type Binding = z.infer<typeof bindingSchema>
export type Address = z.infer<typeof addressSchema>
export type FormMap = z.infer<typeof formMapSchema>
export type PlanLine = z.infer<typeof planLineSchema>
export type Outcome = (typeof outcomes)[number]
export type ReceiptLine = z.infer<typeof receiptLineSchema>
