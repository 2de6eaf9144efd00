/** The fields of a PDF form, as its widgets tell them. Plain data: it knows no page of a browser. */
import { bounds } from './bounds.ts'
import type { Pdf, PdfPage } from './library.ts'

/** On the page as it is shown upright, in points of 1/72 inch from its top left corner. */
export interface Box {
  left: number
  top: number
  right: number
  bottom: number
}

/** One place on a page where a field is shown. */
export interface Widget {
  id: string
  /** From 1. */
  page: number
  box: Box
  /** What a box or radio stands for when it is on. */
  on: string
}

export type FieldKind = 'text' | 'tick' | 'radio' | 'choice'

export interface Field {
  /** The full name, unique in the form. */
  name: string
  kind: FieldKind
  /** Every place where it is shown; those of a radio are its options. */
  widgets: Widget[]
  /** What it holds: a text, an export value, several of them one a line; empty for a tick that is off. */
  value: string
  /** What the form says that it is for; mostly empty. */
  tooltip: string
  options: { value: string; label: string }[]
  several: boolean
  lines: boolean
  /** At most so many letters; 0: as many as one likes. */
  most: number
  /** One letter a cell. */
  comb: boolean
  readOnly: boolean
  required: boolean
  /** Letter size in points; 0: as it fits. */
  size: number
  align: 'left' | 'center' | 'right'
  /** Worked out by a script of the form, which never runs here. */
  computed: boolean
  /** What is drawn there, as its appearance has it; nothing where the viewer draws it. */
  drawn: string | undefined
}

interface Told {
  id: string
  subtype: string
  rect: number[]
  fieldName?: string
  fieldType?: string
  fieldValue?: unknown
  alternativeText?: string
  options?: { exportValue: string; displayValue: string }[]
  multiSelect?: boolean
  multiLine?: boolean
  maxLen?: number
  comb?: boolean
  readOnly?: boolean
  required?: boolean
  hidden?: boolean
  password?: boolean
  checkBox?: boolean
  radioButton?: boolean
  exportValue?: string
  buttonValue?: string
  textAlignment?: number | null
  defaultAppearanceData?: { fontSize?: number }
  actions?: Record<string, unknown> | null
  textContent?: string[]
}

/** A box in the upright page, of one in the form's own space. */
export function boxOf(page: PdfPage, rect: readonly number[]): Box {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = page.getViewport({ scale: 1 }).transform
  const [x = 0, y = 0, z = 0, w = 0] = rect
  const xs = [a * x + c * y + e, a * z + c * w + e]
  const ys = [b * x + d * y + f, b * z + d * w + f]
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) }
}

const text = (value: unknown): string => (typeof value === 'string' ? value : '')

function kindOf(told: Told): FieldKind | undefined {
  if (told.fieldType === 'Tx') return told.password ? undefined : 'text'
  if (told.fieldType === 'Ch') return 'choice'
  if (told.fieldType !== 'Btn') return undefined
  return told.radioButton ? 'radio' : told.checkBox ? 'tick' : undefined
}

function valueOf(kind: FieldKind, { fieldValue }: Told): string {
  if (kind === 'choice') return (Array.isArray(fieldValue) ? fieldValue : [fieldValue]).map(text).join('\n')
  const value = text(fieldValue)
  return kind !== 'text' && value === 'Off' ? '' : value
}

function fieldOf(kind: FieldKind, told: Told): Field {
  const { options = [], textAlignment, actions } = told
  return {
    name: text(told.fieldName).slice(0, bounds.name),
    kind,
    widgets: [],
    value: valueOf(kind, told),
    tooltip: text(told.alternativeText).replaceAll(/\s+/g, ' ').trim().slice(0, bounds.label),
    options: options
      .slice(0, bounds.options)
      .map(({ exportValue, displayValue }) => ({ value: text(exportValue), label: text(displayValue) })),
    several: told.multiSelect === true,
    lines: told.multiLine === true,
    most: told.maxLen ?? 0,
    comb: told.comb === true,
    readOnly: told.readOnly === true,
    required: told.required === true,
    size: told.defaultAppearanceData?.fontSize ?? 0,
    align: textAlignment === 1 ? 'center' : textAlignment === 2 ? 'right' : 'left',
    computed: actions !== null && typeof actions === 'object' && 'Calculate' in actions,
    drawn: told.textContent?.join('\n'),
  }
}

/**
 * The fields of a form in the order of their pages; signatures, buttons and fields without a name are left out.
 * @param hear called with the number of pages read so far
 * @throws RangeError when there are more than are taken in
 */
export async function fieldsOf(pdf: Pdf, hear: (pages: number) => void = () => {}): Promise<Field[]> {
  const fields = new Map<string, Field>()
  let count = 0
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number)
    const all = (await page.getAnnotations()) as Told[]
    count += all.length
    if (count > bounds.fields) throw new RangeError('fields')
    for (const told of all) {
      const kind = told.subtype === 'Widget' && !told.hidden && told.fieldName ? kindOf(told) : undefined
      if (!kind) continue
      const known = fields.get(text(told.fieldName).slice(0, bounds.name))
      const field = known ?? fieldOf(kind, told)
      fields.set(field.name, field)
      const on = kind === 'radio' ? text(told.buttonValue) : kind === 'tick' ? text(told.exportValue) : ''
      field.widgets.push({ id: told.id, page: number, box: boxOf(page, told.rect), on })
      // A radio whose options have no value yet gets it from the one that is on.
      if (known && field.value === '') field.value = valueOf(kind, told)
    }
    hear(number)
  }
  // Boxes of one name that stand for different things are one choice among them.
  for (const field of fields.values())
    if (field.kind === 'tick' && new Set(field.widgets.map(({ on }) => on)).size > 1) field.kind = 'radio'
  return [...fields.values()]
}
