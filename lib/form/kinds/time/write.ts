import type { Control } from '../../page/controls.ts'
import { setWhole } from '../writing/whole.ts'
import { say } from '../../../words/say.ts'

export async function writeTime(control: Control, text: string): Promise<string | undefined> {
  if (text !== '' && !/^\d{2}:\d{2}(:\d{2})?$/.test(text)) return say`“${text}” is not a time as 14:05`
  await setWhole(control.element as HTMLInputElement, text)
  return undefined
}
