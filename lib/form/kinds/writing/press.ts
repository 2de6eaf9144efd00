/** Pointer and keys as pages hear them. Sent events have no effect of their own in the browser, only in the page. */

const codes: Record<string, number> = {
  Backspace: 8,
  Enter: 13,
  Escape: 27,
  ArrowLeft: 37,
  ArrowUp: 38,
  ArrowRight: 39,
  ArrowDown: 40,
  ',': 188,
  '.': 190,
  '-': 189,
}

/** Sends one event of a key; false when the page wants the browser to do nothing more. */
function sendKey(element: Element, type: 'keydown' | 'keypress' | 'keyup', key: string): boolean {
  const character = key.length === 1 ? key.charCodeAt(0) : (codes[key] ?? 0)
  const keyCode = type === 'keypress' ? character : (codes[key] ?? key.toUpperCase().charCodeAt(0))
  const code = /^\d$/.test(key)
    ? `Digit${key}`
    : /^[a-z]$/i.test(key)
      ? `Key${key.toUpperCase()}`
      : key === ' '
        ? 'Space'
        : key
  const init = { key, code, keyCode, which: keyCode, bubbles: true, cancelable: true, composed: true }
  return element.dispatchEvent(new KeyboardEvent(type, type === 'keypress' ? { ...init, charCode: character } : init))
}

export const keyDown = (element: Element, key: string): boolean => sendKey(element, 'keydown', key)
export const keyUp = (element: Element, key: string): boolean => sendKey(element, 'keyup', key)
export const keyPress = (element: Element, key: string): boolean => sendKey(element, 'keypress', key)

/** A key that types nothing: an arrow, Enter, Escape. */
export function strike(element: Element, key: string): boolean {
  const goesOn = keyDown(element, key)
  keyUp(element, key)
  return goesOn
}

/** A click with everything that comes before it when a hand makes it. */
export function press(element: Element): void {
  const box = element.getBoundingClientRect()
  const at = {
    bubbles: true,
    cancelable: true,
    composed: true,
    view: element.ownerDocument.defaultView,
    clientX: box.left + box.width / 2,
    clientY: box.top + box.height / 2,
    button: 0,
    detail: 1,
  }
  const pointer = { ...at, pointerId: 1, pointerType: 'mouse', isPrimary: true }
  // The pointer comes in and moves: some lists mark what it moves over, and take a click on nothing else.
  const inward = { bubbles: false, cancelable: false }
  element.dispatchEvent(new PointerEvent('pointerover', pointer))
  element.dispatchEvent(new PointerEvent('pointerenter', { ...pointer, ...inward }))
  element.dispatchEvent(new MouseEvent('mouseover', at))
  element.dispatchEvent(new MouseEvent('mouseenter', { ...at, ...inward }))
  element.dispatchEvent(new PointerEvent('pointermove', pointer))
  element.dispatchEvent(new MouseEvent('mousemove', at))
  element.dispatchEvent(new PointerEvent('pointerdown', { ...pointer, buttons: 1 }))
  const focuses = element.dispatchEvent(new MouseEvent('mousedown', { ...at, buttons: 1 }))
  if (focuses)
    (element.closest('input, select, textarea, button, [tabindex], [contenteditable]') as HTMLElement | null)?.focus({
      preventScroll: true,
    })
  element.dispatchEvent(new PointerEvent('pointerup', pointer))
  element.dispatchEvent(new MouseEvent('mouseup', at))
  element.dispatchEvent(new MouseEvent('click', at))
}
