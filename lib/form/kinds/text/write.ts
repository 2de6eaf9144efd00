import type { Control } from '../../page/controls.ts'
import type { Valued } from '../writing/events.ts'
import { typeInto } from '../writing/type.ts'
import { say } from '../../../words/say.ts'

export async function writeText(control: Control, text: string): Promise<string | undefined> {
  const field = control.element as Valued
  if (field.maxLength >= 0 && text.length > field.maxLength)
    return say`takes ${field.maxLength} characters at most, this is ${text.length}`
  await typeInto(field, text)
  return undefined
}
