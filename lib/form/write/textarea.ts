import type { Control } from '../controls.ts'
import { typeInto } from './type.ts'
import { say } from '../../words/say.ts'

export async function writeTextarea(control: Control, text: string): Promise<string | undefined> {
  const area = control.element as HTMLTextAreaElement
  if (area.maxLength >= 0 && text.length > area.maxLength)
    return say`takes ${area.maxLength} characters at most, this is ${text.length}`
  await typeInto(area, text)
  return undefined
}
