import type { Control } from '../../page/controls.ts'
import { stepTo } from '../writing/steps.ts'
import { say } from '../../../words/say.ts'

export async function writeSpinbutton({ element }: Control, text: string): Promise<string | undefined> {
  if (!Number.isFinite(Number(text)) || text === '') return say`“${text}” is not a plain number`
  return await stepTo(element, Number(text), ['ArrowUp', 'ArrowDown'])
}
