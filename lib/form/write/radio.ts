import { optionsOf } from '../clues.ts'
import type { Control } from '../controls.ts'
import { inFocus } from './events.ts'
import { noOption } from './reasons.ts'

export function writeRadio(control: Control, text: string): string | undefined {
  if (text === '') return 'a group with a choice cannot be emptied again by a click: set it by hand'
  const options = optionsOf(control)
  const radio = control.elements[options.indexOf(text)] as HTMLInputElement | undefined
  if (!radio) return `${noOption} “${text}”`
  if (options.lastIndexOf(text) !== options.indexOf(text)) return `has several options “${text}”`
  if (!radio.checked) inFocus(radio, () => radio.click())
  return undefined
}
