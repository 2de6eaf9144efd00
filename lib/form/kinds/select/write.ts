import { optionsOf } from '../../page/clues.ts'
import type { Control } from '../../page/controls.ts'
import { inFocus, send } from '../writing/events.ts'
import { noOption } from '../writing/reasons.ts'
import { say } from '../../../words/say.ts'

export function writeSelect(control: Control, text: string): string | undefined {
  const select = control.element as HTMLSelectElement
  const options = optionsOf(control)
  const at = options.indexOf(text)
  const option = select.options[at]
  if (!option) return noOption(text)
  if (options.lastIndexOf(text) !== at) return say`has several options “${text}”`
  if (option.disabled || option.closest('optgroup')?.disabled) return say`the option “${text}” is disabled`
  if (select.selectedIndex === at) return undefined
  inFocus(select, () => {
    // By index: two options may carry the same value.
    select.selectedIndex = at
    send(select, 'input')
    send(select, 'change')
  })
  return undefined
}
