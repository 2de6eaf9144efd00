import type { Control } from '../controls.ts'
import { typeInto } from './type.ts'
import { say } from '../../words/say.ts'

export async function writeText(control: Control, text: string): Promise<string | undefined> {
  const input = control.element as HTMLInputElement
  if (input.maxLength >= 0 && text.length > input.maxLength)
    return say`takes ${input.maxLength} characters at most, this is ${text.length}`
  await typeInto(input, text)
  return undefined
}
