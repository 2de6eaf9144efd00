import type { Control } from '../controls.ts'
import { inFocus, send, setValue } from './events.ts'

/** A date control takes its value in one piece: its boxes for day, month and year cannot be typed into from outside. */
export function writeDate(control: Control, text: string): string | undefined {
  if (text !== '' && !/^\d{4}-\d{2}-\d{2}$/.test(text)) return `“${text}” is not a date as year-month-day`
  const input = control.element as HTMLInputElement
  inFocus(input, () => {
    setValue(input, text)
    send(input, 'input')
    send(input, 'change')
  })
  return undefined
}
