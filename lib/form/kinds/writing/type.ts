/**
 * Typing into text-like elements. The editing command keeps the browser's own undo and sends trusted events; where it
 * does nothing (a window in the background, a control that takes no typing) the value is set and the events are sent.
 */
import { sameness } from '../../same.ts'
import { command } from './command.ts'
import { askBefore, enter, leave, listen, send, sendInput, setValue, type Valued } from './events.ts'
import { seenInFocus } from './in-focus.ts'
import { keyDown, keyPress, keyUp } from './press.ts'
import { pause } from './wait.ts'

/** Empties the element: everything selected, then deleted. */
function clear(element: Valued): void {
  if (element.value === '') return
  element.select()
  if (!askBefore(element, 'deleteContentBackward')) return
  if (command(element, 'delete', '', true) && element.value === '') return
  setValue(element, '')
  sendInput(element, '')
}

/** The whole text at once, over what is selected; false when the page has taken it upon itself. */
function insert(element: Valued, text: string): boolean {
  element.select()
  if (text === '') clear(element)
  else if (!askBefore(element, 'insertText', text)) return false
  else if (!command(element, 'insertText', text, true)) {
    setValue(element, text)
    sendInput(element, text)
  }
  return true
}

/** One key after the other; a page that handles keys itself keeps the browser from typing them. */
export async function typeKeys(element: Valued, text: string): Promise<void> {
  for (const key of text) {
    const goesOn = keyDown(element, key) && keyPress(element, key) && askBefore(element, 'insertText', key)
    if (goesOn && !command(element, 'insertText', key, true)) {
      setValue(element, element.value + key)
      sendInput(element, key)
    }
    keyUp(element, key)
    // A page that draws itself anew after a key does so before the next.
    await undefined
  }
}

/** Numbers, dates and codes are what pages watch key by key; words are not. */
const watched = (text: string): boolean => text.length <= 24 && /\d/.test(text) && !/\p{L}{3}/u.test(text)

/** Types without leaving the control. */
export async function typeText(element: Valued, text: string): Promise<void> {
  const right = () => sameness(element.value, text) !== 'different'
  if (watched(text)) {
    clear(element)
    await typeKeys(element, text)
    if (right()) return
    await pause(0)
    if (right()) return
  }
  if (!insert(element, text) && !right()) {
    clear(element)
    await typeKeys(element, text)
    return
  }
  // Pages that add up as one types often listen to nothing but this.
  keyUp(element, text.slice(-1) || 'Backspace')
}

/** Puts text into a text-like element as a person would: focus, replace what is there, leave. */
export async function typeInto(element: Valued, text: string): Promise<void> {
  const before = element.value
  enter(element)
  const ears = listen(element, ['change'])
  try {
    // Nobody types in the instant of the click: many pages draw the field anew when it gets the focus.
    await pause(0)
    await seenInFocus(element)
    await typeText(element, text)
  } finally {
    leave(element)
    if (!ears.heard('change') && element.value !== before) send(element, 'change')
    ears.stop()
  }
}
