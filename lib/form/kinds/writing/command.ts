/** The browser's own editing commands. They type wherever the focus is, so that is looked at before and on the way. */
import { gate } from '../../page/gate.ts'
import { listen } from './events.ts'

function holdsFocus(element: HTMLElement): boolean {
  const { activeElement } = element.getRootNode() as Document | ShadowRoot
  if (activeElement !== element && !(activeElement && element.contains(activeElement))) return false
  if (!element.isContentEditable) return true
  const selection = element.ownerDocument.getSelection()
  return !selection?.anchorNode || element.contains(selection.anchorNode)
}

/**
 * Runs an editing command on the element; false when it did nothing there. A page that takes the focus away meanwhile gets
 * no text. `asked`: the page has heard of it before, as not every browser tells of a command; it hears of it once.
 */
export function command(
  element: HTMLElement,
  name: 'insertText' | 'insertParagraph' | 'delete',
  text = '',
  asked = false,
): boolean {
  gate(element)
  const view = element.ownerDocument.defaultView
  if (!holdsFocus(element) || !view) return false
  const ears = listen(element, ['input'])
  const ends = new AbortController()
  const keep = (event: Event) => {
    if (!holdsFocus(element)) event.preventDefault()
    else if (asked) event.stopImmediatePropagation()
  }
  for (const capture of [true, false]) view.addEventListener('beforeinput', keep, { capture, signal: ends.signal })
  try {
    return element.ownerDocument.execCommand(name, false, text) && ears.heard('input')
  } catch {
    return false
  } finally {
    ends.abort()
    ears.stop()
  }
}
