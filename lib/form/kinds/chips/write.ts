import type { Control } from '../../page/controls.ts'
import { wrapperOf } from '../../page/face.ts'
import { several } from '../../kind-traits.ts'
import { chipTexts } from './read.ts'
import { tidy } from '../../words.ts'
import { enter, leave } from '../writing/events.ts'
import { keyDown, keyPress, keyUp, press, strike } from '../writing/press.ts'
import { byHand } from '../writing/reasons.ts'
import { typeKeys, typeText } from '../writing/type.ts'
import { until } from '../writing/wait.ts'
import { say } from '../../../words/say.ts'

/** What takes a chip away when it is clicked. */
const signs = 'button, [role=button], svg, [class*=remove], [class*=close], [class*=delete]'

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
async function takeAway(input: HTMLInputElement, keep: readonly string[]): Promise<string | undefined> {
  for (;;) {
    const there = chipTexts(input)
    const extra = there.findLast((each) => !keep.includes(each))
    if (extra === undefined) return undefined
    const fewer = () => chipTexts(input).length < there.length
    const sign = signOf(input, extra)
    if (sign) press(sign)
    if (sign && (await until(fewer, 300))) continue
    // Some fields mark the last chip at the first press and take it away at the second.
    for (let count = 0; count < 2 && extra === there.at(-1) && input.value === '' && !fewer(); count++) {
      strike(input, 'Backspace')
      await until(fewer, 150)
    }
    if (!fewer()) return say`chips are taken away by hand`
  }
}

/** Types each text and ends it with Enter, else a comma. A sent Enter submits nothing by itself, unlike a hand's. */
export async function writeChips(
  { element }: Control,
  text: string,
  _file?: File,
  exact = false,
): Promise<string | undefined> {
  const input = element as HTMLInputElement
  const wanted = several(text.includes(';') ? text : text.replaceAll(/,\s*/g, ';'))
  if (wanted.length === 0 && !exact) return say`chips are taken away by hand`
  enter(input)
  try {
    const left = exact ? await takeAway(input, wanted) : undefined
    if (left) return left
    for (const part of wanted) {
      if (chipTexts(input).includes(part)) continue
      await typeText(input, part)
      const taken = () => input.value === '' && chipTexts(input).includes(part)
      if (keyDown(input, 'Enter')) keyPress(input, 'Enter')
      keyUp(input, 'Enter')
      if (await until(taken, 200)) continue
      if (input.value === part) await typeKeys(input, ',')
      if (!(await until(taken, 200))) return byHand
    }
    return undefined
  } finally {
    leave(input)
  }
}
