import type { Control } from '../../page/controls.ts'
import { chipTexts, looseText, namesChips, saysChips } from '../../page/chips.ts'
import { wrapperOf } from '../../page/face.ts'
import { several } from '../../kind-traits.ts'
import { tidy } from '../../words.ts'
import { command } from '../writing/command.ts'
import { enter, leave, type Valued } from '../writing/events.ts'
import { keyDown, keyPress, keyUp, press, strike } from '../writing/press.ts'
import { byHand } from '../writing/reasons.ts'
import { typeKeys, typeText } from '../writing/type.ts'
import { until } from '../writing/wait.ts'
import { say } from '../../../words/say.ts'

/** What takes a chip away when it is clicked. */
const signs = 'button, [role=button], svg, [class*=remove], [class*=close], [class*=delete]'

/** So long a page may draw a chip leaving, in ms: while it does, another key or press would take the next one. */
const leaving = 1500

/** The sign inside the chip of that text, or beside it while nothing else stands there. */
function signOf(input: HTMLElement, text: string): Element | undefined {
  const says = (element: Element) => tidy(element.textContent ?? '').replace(/\s*[×✕✖]$/, '') === text
  const chips = [...wrapperOf(input, 4).querySelectorAll('*')].filter((each) => says(each) && !each.matches(signs))
  for (const chip of chips) {
    const sign = chip.querySelector(signs)
    if (sign) return sign
  }
  return undefined
}

/** Takes away the chips that are not to stay: the last one by the key for it, any other by its own sign. */
async function takeAway(input: HTMLElement, keep: readonly string[]): Promise<string | undefined> {
  for (;;) {
    const there = chipTexts(input)
    const extra = there.findLast((each) => !keep.includes(each))
    if (extra === undefined) return undefined
    const fewer = () => chipTexts(input).length < there.length
    const sign = signOf(input, extra)
    if (sign) press(sign)
    if (sign && (await until(fewer, leaving))) continue
    // Some fields mark the last chip at the first press and take it away at the second.
    for (let count = 0; count < 2 && extra === there.at(-1) && looseText(input) === '' && !fewer(); count++) {
      strike(input, 'Backspace')
      await until(fewer, 150)
    }
    if (!fewer()) return say`chips are taken away by hand`
  }
}

async function type(field: HTMLElement, text: string): Promise<void> {
  if (!field.isContentEditable) return typeText(field as Valued, text)
  field.ownerDocument.getSelection()?.selectAllChildren(field)
  if (text === '') command(field, 'delete')
  else command(field, 'insertText', text)
}

/** Ends what was typed with Enter, else a comma; says whether a chip came of it. */
async function commit(input: HTMLElement, part: string): Promise<boolean> {
  const taken = () => looseText(input) === '' && chipTexts(input).includes(part)
  if (keyDown(input, 'Enter')) keyPress(input, 'Enter')
  keyUp(input, 'Enter')
  if (await until(taken, 200)) return true
  if (looseText(input) === part && !input.isContentEditable) await typeKeys(input as Valued, ',')
  return (await until(taken, 200)) ?? false
}

/** Types each text and ends it with Enter, else a comma. A sent Enter submits nothing by itself, unlike a hand's. */
export async function writeChips(
  { element }: Control,
  text: string,
  _file?: File,
  exact = false,
): Promise<string | undefined> {
  const wanted = several(text.includes(';') ? text : text.replaceAll(/,\s*/g, ';'))
  if (wanted.length === 0 && !exact) return say`chips are taken away by hand`
  enter(element)
  try {
    if (exact && looseText(element) !== '') await type(element, '')
    const left = exact ? await takeAway(element, wanted) : undefined
    if (left) return left
    for (const [at, part] of wanted.entries()) {
      if (chipTexts(element).includes(part)) continue
      await type(element, part)
      if (await commit(element, part)) continue
      if (saysChips(element) || at > 0 || looseText(element).replace(/,$/, '') !== part) return byHand
      // Neither key did anything: a plain field after all. What a form would not submit may be lost.
      await type(element, text)
      const { form, name } = element as HTMLInputElement
      return (form && name) || !namesChips(element) ? undefined : byHand
    }
    return undefined
  } finally {
    leave(element)
  }
}
