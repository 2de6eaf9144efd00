import type { Control } from '../controls.ts'
import { typeInto } from './events.ts'

export function writeTextarea(control: Control, text: string): string | undefined {
  const area = control.element as HTMLTextAreaElement
  if (area.maxLength >= 0 && text.length > area.maxLength)
    return `takes ${area.maxLength} characters at most, this is ${text.length}`
  typeInto(area, text)
  return undefined
}
