import type { Control } from '../../page/controls.ts'
import { setWhole } from '../writing/whole.ts'
import { say } from '../../../words/say.ts'

export async function writeMonth(control: Control, text: string): Promise<string | undefined> {
  if (text !== '' && !/^\d{4}-\d{2}$/.test(text)) return say`“${text}” is not a month as 2026-02`
  await setWhole(control.element as HTMLInputElement, text)
  return undefined
}
