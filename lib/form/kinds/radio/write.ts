import { optionsOf } from '../../page/clues.ts'
import type { Control } from '../../page/controls.ts'
import { isOn } from '../tick.ts'
import { inFocus } from '../writing/events.ts'
import { press } from '../writing/press.ts'
import { noOption } from '../writing/reasons.ts'
import { say } from '../../../words/say.ts'

export function writeRadio(control: Control, text: string): string | undefined {
  if (text === '') return say`one of the choices stays chosen: choose the right one, or load the page anew`
  const options = optionsOf(control)
  const radio = control.elements[options.indexOf(text)]
  if (!radio) return noOption(text)
  if (options.lastIndexOf(text) !== options.indexOf(text)) return say`has several options “${text}”`
  if (isOn(radio)) return undefined
  if (radio.localName === 'input') inFocus(radio, () => radio.click())
  else press(radio)
  return undefined
}
