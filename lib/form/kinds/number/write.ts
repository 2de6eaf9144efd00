import type { Control } from '../../page/controls.ts'
import { typeInto } from '../writing/type.ts'
import { say } from '../../../words/say.ts'

export async function writeNumber(control: Control, text: string): Promise<string | undefined> {
  if (text !== '' && !/^[-+]?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(text)) return say`“${text}” is not a plain number`
  await typeInto(control.element as HTMLInputElement, text)
  return undefined
}
