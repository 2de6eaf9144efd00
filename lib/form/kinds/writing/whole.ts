/** Controls that take a value in one piece: their boxes and handles cannot be typed into from outside. */
import { inFocus, send, setValue } from './events.ts'

export function setWhole(input: HTMLInputElement, text: string): void {
  inFocus(input, () => {
    setValue(input, text)
    send(input, 'input')
    send(input, 'change')
  })
}
