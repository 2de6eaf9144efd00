import { optionElements, optionsOf } from '../../page/clues.ts'
import type { Control } from '../../page/controls.ts'
import { several } from '../../kind-traits.ts'
import { isOn } from '../tick.ts'
import { scrollThrough } from '../combobox/write.ts'
import { press } from '../writing/press.ts'
import { byHand, noOption } from '../writing/reasons.ts'
import { pause } from '../writing/wait.ts'

/** Clicks the options of a list that is always open. */
export async function writeListbox(control: Control, text: string): Promise<string | undefined> {
  const many = control.element.getAttribute('aria-multiselectable') === 'true'
  const wanted = many ? several(text) : [text]
  const options = optionsOf(control)
  if (options.length === 0) {
    // What is chosen out of sight cannot be taken back.
    if (many) return byHand
    const fit = await scrollThrough([control.element], text)
    if (fit && !isOn(fit.element)) press(fit.element)
    return fit ? undefined : noOption(text)
  }
  const missing = wanted.find((each) => !options.includes(each))
  if (missing !== undefined) return noOption(missing)
  for (const label of new Set([...options, ...wanted])) {
    // Drawn anew after each click.
    const option = optionElements(control.element)[optionsOf(control).indexOf(label)]
    if (!option || isOn(option) === wanted.includes(label)) continue
    if (!many && !wanted.includes(label)) continue
    press(option)
    await pause(20)
  }
  return undefined
}
