/** Dates in boxes and in sections. */
import type { Control } from '../page/controls.ts'
import { partOf, type DatePart } from '../page/date-part.ts'
import { nameOf, textIn } from '../page/names.ts'
import { partName } from '../page/recognise.ts'
import { tidy } from '../words.ts'

export interface DateBox {
  part: DatePart
  element: HTMLElement
}

/** Which element takes which part of the date. */
export function dateBoxes({ elements }: Control): DateBox[] {
  return elements.flatMap((element) => {
    const part = partOf(element, nameOf(element), partName(element))
    return part ? [{ part, element }] : []
  })
}

/** Number of a month by its name, in English, or of any text of digits. */
export function partNumber(text: string): number | undefined {
  const digits = /^\D*(\d+)\D*$/.exec(text)?.[1]
  if (digits !== undefined) return Number(digits)
  const at = months.indexOf(text.trim().slice(0, 3).toLowerCase())
  return at < 0 ? undefined : at + 1
}

export const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/** What one box or section shows. */
export function partText(element: HTMLElement): string {
  if (element.localName === 'select') {
    const select = element as HTMLSelectElement
    const option = select.options[select.selectedIndex]
    return option && option.value !== '' ? tidy(option.label || option.text) : ''
  }
  if (element.localName === 'input') return (element as HTMLInputElement).value
  const now = element.getAttribute('aria-valuenow')
  return now ?? (element.getAttribute('aria-valuetext')?.match(/^(empty|\D+[-–]\D+)$/i) ? '' : tidy(textIn(element)))
}

/** The date as year-month-day when it is complete, nothing when it is empty, else what each part shows. */
export function dateShown(control: Control): string {
  const boxes = dateBoxes(control)
  const texts = boxes.map(({ element }) => partText(element))
  const numbers = texts.map(partNumber)
  if (numbers.every((each) => each === undefined)) return ''
  const number = (part: DatePart) => numbers[boxes.findIndex((box) => box.part === part)]
  const [y, m, d] = [number('y'), number('M'), number('d')]
  if (y !== undefined && y > 999 && m !== undefined && d !== undefined)
    return `${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`
  return texts.map((text) => text || '?').join(' ')
}
