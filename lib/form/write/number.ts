import type { Control } from '../controls.ts'
import { typeInto } from './events.ts'

export function writeNumber(control: Control, text: string): string | undefined {
  if (text !== '' && !/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text)) return `“${text}” is not a plain number`
  typeInto(control.element as HTMLInputElement, text)
  return undefined
}
