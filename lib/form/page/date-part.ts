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

const boxes: ReadonlySet<string> = new Set(['text', 'number', 'select', 'combobox'])

/** The part of a date that a control takes by itself, as far as its name or placeholder says. */
export function datePattern({ kind, element, name: own }: Control): DatePart | undefined {
  if (!boxes.has(kind)) return undefined
  // A whole date also speaks of days: a box is called by its part and little else.
  return own.length <= 24 ? datePart(own, (element as HTMLInputElement).placeholder ?? '') : undefined
}
