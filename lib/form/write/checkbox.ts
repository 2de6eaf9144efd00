import type { Control } from '../controls.ts'
import { checked, notChecked } from '../read.ts'
import { inFocus } from './events.ts'

export function writeCheckbox(control: Control, text: string): string | undefined {
  if (text !== checked && text !== notChecked) return `“${text}” is neither “${checked}” nor “${notChecked}”`
  const box = control.element as HTMLInputElement
  if (box.checked !== (text === checked)) inFocus(box, () => box.click())
  return undefined
}
