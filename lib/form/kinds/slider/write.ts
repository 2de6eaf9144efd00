import type { Control } from '../../page/controls.ts'
import { stepTo } from '../writing/steps.ts'
import { setWhole } from '../writing/whole.ts'
import { say } from '../../../words/say.ts'

/** A native handle takes its value in one piece, a drawn one takes arrow keys. */
export async function writeSlider({ element }: Control, text: string): Promise<string | undefined> {
  if (!Number.isFinite(Number(text)) || text === '') return say`“${text}” is not a plain number`
  if (element.localName !== 'input') return await stepTo(element, Number(text), ['ArrowRight', 'ArrowLeft'])
  await setWhole(element as HTMLInputElement, text)
  return undefined
}
