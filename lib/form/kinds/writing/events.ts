/** What every writer needs: listening for what the browser sends by itself, and sending what it did not. */
import { gate } from '../../page/gate.ts'

export interface Ears {
  /** Whether an event of this type reached the element since listening began. */
  heard(type: string): boolean
  stop(): void
}

export function listen(element: HTMLElement, types: readonly string[]): Ears {
  const seen = new Set<string>()
  const ends = new AbortController()
  for (const type of types) element.addEventListener(type, () => seen.add(type), { capture: true, signal: ends.signal })
  return { heard: (type) => seen.has(type), stop: () => ends.abort() }
}

export function send(element: HTMLElement, type: string): void {
  // Not composed: a native change never leaves its shadow root either. A native input does.
  element.dispatchEvent(new Event(type, { bubbles: true, composed: type === 'input' }))
}

/** Tells the page what is about to be typed or deleted; false when it does so itself, or wants none of it. */
export function askBefore(element: HTMLElement, inputType: string, data: string | null = null): boolean {
  return element.dispatchEvent(
    new InputEvent('beforeinput', { bubbles: true, cancelable: true, composed: true, inputType, data }),
  )
}

export function sendInput(element: HTMLElement, text: string): void {
  element.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true, inputType: 'insertText', data: text }))
}

/** Puts the focus into the element. A window without the focus sends no focus events, so they are sent here. */
export function enter(element: HTMLElement): void {
  const ears = listen(element, ['focus'])
  element.focus({ preventScroll: true })
  if (!ears.heard('focus')) {
    element.dispatchEvent(new FocusEvent('focus', { composed: true }))
    element.dispatchEvent(new FocusEvent('focusin', { bubbles: true, composed: true }))
  }
  ears.stop()
}

export function sendLeft(element: HTMLElement): void {
  element.dispatchEvent(new FocusEvent('blur', { composed: true }))
  element.dispatchEvent(new FocusEvent('focusout', { bubbles: true, composed: true }))
}

/** Takes the focus out of the element again. */
export function leave(element: HTMLElement): void {
  const ears = listen(element, ['blur'])
  element.blur()
  if (!ears.heard('blur')) sendLeft(element)
  ears.stop()
}

/** Runs `act` with the focus in the element. */
export function inFocus(element: HTMLElement, act: () => void): void {
  enter(element)
  try {
    // Hearing of the focus, the page may have changed it.
    gate(element)
    act()
  } finally {
    leave(element)
  }
}

export type Valued = HTMLInputElement | HTMLTextAreaElement

/**
 * Sets the value past anything a page put over it. Frameworks that track values define their own `value` on the
 * element. A content script sees another wrapper of the same element without that property, so there `element.value =`
 * already is the browser's own setter; taking it from the prototype makes the same code right in the page's world too.
 * Either way the framework's remembered value stays old, the value it reads at the next input event is new, and it
 * takes the difference for typing.
 */
export function setValue(element: Valued, text: string): void {
  gate(element)
  const prototype = element.localName === 'textarea' ? HTMLTextAreaElement.prototype : HTMLInputElement.prototype
  const setter = Object.getOwnPropertyDescriptor(prototype, 'value')?.set
  if (setter) setter.call(element, text)
  else element.value = text
}
