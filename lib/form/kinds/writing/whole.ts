/** Controls that take a value in one piece: their boxes and handles cannot be typed into from outside. */
import { gate } from '../../page/gate.ts'
import { hiddenBecause } from '../../page/visible.ts'
import { enter, leave, send, setValue } from './events.ts'
import { seenInFocus } from './in-focus.ts'

export async function setWhole(input: HTMLInputElement, text: string): Promise<void> {
  enter(input)
  try {
    // A handle may be drawn by the page; a box may show only while it has the focus.
    if (input.type !== 'range' && hiddenBecause(input) !== undefined) await seenInFocus(input)
    // Hearing of the focus, the page may have changed it.
    gate(input)
    setValue(input, text)
    send(input, 'input')
    send(input, 'change')
  } finally {
    leave(input)
  }
}
