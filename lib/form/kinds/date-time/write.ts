import type { Control } from '../../page/controls.ts'
import { setWhole } from '../writing/whole.ts'
import { say } from '../../../words/say.ts'

export async function writeDateTime(control: Control, text: string): Promise<string | undefined> {
  if (text !== '' && !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/.test(text))
    return say`“${text}” is not a date and time as 2026-02-11T14:05`
  await setWhole(control.element as HTMLInputElement, text)
  return undefined
}
