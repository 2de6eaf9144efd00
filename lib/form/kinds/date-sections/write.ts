import type { Control } from '../../page/controls.ts'
import { alive } from '../../page/dom.ts'
import { dateBoxes, dateShown, partNumber, partText } from '../date-parts.ts'
import { leave } from '../writing/events.ts'
import { keyDown, keyUp, press, strike } from '../writing/press.ts'
import { byHand } from '../writing/reasons.ts'
import { pause, until } from '../writing/wait.ts'
import { say } from '../../../words/say.ts'

/** One digit, as a section hears it: the key, then the text that an editable section gets. */
function typeDigit(section: HTMLElement, digit: string): void {
  if (keyDown(section, digit) && section.isContentEditable) {
    const before = new InputEvent('beforeinput', {
      inputType: 'insertText',
      data: digit,
      bubbles: true,
      cancelable: true,
      composed: true,
    })
    if (section.dispatchEvent(before)) {
      section.ownerDocument.getSelection()?.selectAllChildren(section)
      section.ownerDocument.execCommand('insertText', false, digit)
    }
  }
  keyUp(section, digit)
}

/** Types the day, the month and the year each into its section; sections that take no digits are stepped. */
export async function writeDateSections(control: Control, text: string): Promise<string | undefined> {
  const date = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)
  if (!date) return text === '' ? say`sections are emptied by hand` : say`“${text}” is not a date as year-month-day`
  for (const { part, element } of dateBoxes(control)) {
    const digits = date[part === 'y' ? 1 : part === 'M' ? 2 : 3] ?? ''
    const right = () => partNumber(partText(element)) === Number(digits)
    if (right()) continue
    // The first section that gets the focus may be drawn anew, or listen only a moment later.
    for (let tries = 0; tries < 3 && !right() && alive(element); tries++) {
      press(element)
      element.focus({ preventScroll: true })
      await pause(tries * 60)
      for (const digit of digits) {
        typeDigit(element, digit)
        await pause(10)
      }
      await until(right, 60, 10)
    }
    for (let count = 0; !right() && count < 130; count++) {
      const now = partNumber(partText(element))
      strike(element, now !== undefined && now > Number(digits) ? 'ArrowDown' : 'ArrowUp')
      await until(() => partNumber(partText(element)) !== now, 60, 5)
      if (partNumber(partText(element)) === now) break
    }
    leave(element)
    if (!right()) return byHand
  }
  return (await until(() => dateShown(control) === text, 300)) ? undefined : byHand
}
