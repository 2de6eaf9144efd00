import type { Control } from '../../page/controls.ts'
import { checked, notChecked } from '../../tick-words.ts'
import { isOn } from '../tick.ts'
import { byHand } from '../writing/reasons.ts'
import { inFocus } from '../writing/events.ts'
import { press, strike } from '../writing/press.ts'
import { until } from '../writing/wait.ts'
import { say } from '../../../words/say.ts'

/** Ticks a native or drawn box by a click; what is right already is left alone. */
export async function writeCheckbox({ element }: Control, text: string): Promise<string | undefined> {
  if (text !== checked && text !== notChecked) return say`“${text}” is neither “${checked}” nor “${notChecked}”`
  const wanted = text === checked
  if (isOn(element) === wanted) return undefined
  const native = element.localName === 'input'
  if (native) inFocus(element, () => element.click())
  else press(element)
  if (await until(() => isOn(element) === wanted, native ? 0 : 400)) return undefined
  // A native box that the page sets back is read back as it is; a drawn one may listen for the space bar only.
  if (native) return undefined
  element.focus({ preventScroll: true })
  strike(element, ' ')
  element.blur()
  return (await until(() => isOn(element) === wanted, 400)) ? undefined : byHand
}
