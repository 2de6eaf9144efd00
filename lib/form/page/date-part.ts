/** Which part of a date a box or a section takes. */
import type { Control } from './controls.ts'

export type DatePart = 'd' | 'M' | 'y'

const parts: readonly (readonly [RegExp, DatePart])[] = [
  [/\bday\b|^dd?$/i, 'd'],
  [/\bmonth\b|^mm?$/i, 'M'],
  [/\byear\b|^yy(yy)?$/i, 'y'],
]

/** The part that one of the texts names. */
export function datePart(...texts: string[]): DatePart | undefined {
  for (const text of texts) {
    const found = parts.filter(([wording]) => wording.test(text.trim()))
    if (found.length === 1) return found[0]?.[1]
  }
  return undefined
}

const attribute = (element: Element, name: string): string => Element.prototype.getAttribute.call(element, name) ?? ''

/** The part that the field's own name or id ends with: `d-Day`, `test_month`, `date[yyyy]`. */
function partOfId(element: Element): DatePart | undefined {
  for (const name of ['name', 'id', 'data-part', 'autocomplete']) {
    const last = /(?:^|[^a-z]|[a-z](?=[A-Z]))([A-Z]?[a-z]+)\]?$/.exec(attribute(element, name))?.[1] ?? ''
    const part = datePart(last)
    if (part) return part
  }
  return undefined
}

/** The part that a box says it takes, wherever it says so; boxes are often all called by the whole date. */
export const partOf = (element: Element, ...texts: string[]): DatePart | undefined =>
  datePart(...texts, attribute(element, 'placeholder')) ?? partOfId(element)

const boxes: ReadonlySet<string> = new Set(['text', 'number', 'select', 'combobox'])

/** The part of a date that a control takes by itself, as far as its name or placeholder says. */
export function datePattern({ kind, element, name: own }: Control): DatePart | undefined {
  if (!boxes.has(kind)) return undefined
  // A whole date also speaks of days: a box is called by its part and little else.
  const short = own.length <= 24 ? own : (/\b(day|month|year)$|^(day|month|year)\b/i.exec(own)?.[0] ?? '')
  return partOf(element, short)
}
