import type { Control } from '../controls.ts'
import { several } from '../kinds.ts'
import { chipTexts } from '../read/chips.ts'
import { enter, leave } from './events.ts'
import { keyDown, keyPress, keyUp } from './press.ts'
import { byHand } from './reasons.ts'
import { typeKeys, typeText } from './type.ts'
import { until } from './wait.ts'
import { say } from '../../words/say.ts'

/** Types each text and ends it with Enter, else a comma. A sent Enter submits nothing by itself, unlike a hand's. */
export async function writeChips({ element }: Control, text: string): Promise<string | undefined> {
  const input = element as HTMLInputElement
  const there = chipTexts(input)
  if (text === '') return there.length === 0 ? undefined : say`chips are taken away by hand`
  enter(input)
  try {
    for (const part of several(text.includes(';') ? text : text.replaceAll(/,\s*/g, ';'))) {
      if (there.includes(part)) continue
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
