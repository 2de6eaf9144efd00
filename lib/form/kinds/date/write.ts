import type { Control } from '../../page/controls.ts'
import { setWhole } from '../writing/whole.ts'
import { say } from '../../../words/say.ts'

export async function writeDate(control: Control, text: string): Promise<string | undefined> {
  if (text !== '' && !/^\d{4}-\d{2}-\d{2}$/.test(text)) return say`“${text}” is not a date as year-month-day`
  await setWhole(control.element as HTMLInputElement, text)
  return undefined
}
