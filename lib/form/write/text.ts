import type { Control } from '../controls.ts'
import { typeInto } from './events.ts'

export function writeText(control: Control, text: string): string | undefined {
  const input = control.element as HTMLInputElement
  if (input.maxLength >= 0 && text.length > input.maxLength)
    return `takes ${input.maxLength} characters at most, this is ${text.length}`
  typeInto(input, text)
  return undefined
}
