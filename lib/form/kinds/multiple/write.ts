import { optionsOf } from '../../page/clues.ts'
import type { Control } from '../../page/controls.ts'
import { several } from '../../kind-traits.ts'
import { inFocus, send } from '../writing/events.ts'
import { noOption } from '../writing/reasons.ts'
import { say } from '../../../words/say.ts'

/** Chooses exactly the options that the text names, `A; B`. */
export function writeMultiple(control: Control, text: string): string | undefined {
  const select = control.element as HTMLSelectElement
  const options = optionsOf(control)
  const wanted = several(text)
  const missing = wanted.find((each) => !options.includes(each))
  if (missing !== undefined) return noOption(missing)
  const double = wanted.find((each) => options.indexOf(each) !== options.lastIndexOf(each))
  if (double !== undefined) return say`has several options “${double}”`
  inFocus(select, () => {
    for (const [at, option] of [...select.options].entries()) option.selected = wanted.includes(options[at] ?? '')
    send(select, 'input')
    send(select, 'change')
  })
  return undefined
}
