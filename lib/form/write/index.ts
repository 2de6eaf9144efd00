/** Writing into a control, by its kind. */
import type { Control } from '../controls.ts'
import type { ControlKind } from '../schema.ts'
import { writeCheckbox } from './checkbox.ts'
import { writeDate } from './date.ts'
import { writeNumber } from './number.ts'
import { writeRadio } from './radio.ts'
import { writeSelect } from './select.ts'
import { writeText } from './text.ts'
import { writeTextarea } from './textarea.ts'

const writers: Record<ControlKind, (control: Control, text: string) => string | undefined> = {
  text: writeText,
  number: writeNumber,
  date: writeDate,
  textarea: writeTextarea,
  select: writeSelect,
  radio: writeRadio,
  checkbox: writeCheckbox,
}

/** Writes the text and returns nothing, or leaves the control alone and returns the reason. */
export function write(control: Control, text: string): string | undefined {
  const { element } = control
  if (!element.isConnected) return 'is no longer on the page'
  if (element.matches(':disabled')) return 'is disabled by the page'
  if ((element as HTMLInputElement).readOnly && control.kind !== 'radio' && control.kind !== 'checkbox')
    return 'can only be read'
  try {
    return writers[control.kind](control, text)
  } catch (error) {
    return `could not be written: ${error instanceof Error ? error.message : String(error)}`
  }
}
