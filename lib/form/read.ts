/** Reading what a control shows, and waiting until the page has settled. */
import { optionsOf } from './clues.ts'
import type { Control } from './controls.ts'
import { textIn } from './names.ts'
import { tidy } from './words.ts'

export const checked = 'checked'
export const notChecked = 'not checked'

/** What a control holds now, in the wording of a plan: the text, the option's label, `checked` or `not checked`. */
export function shown(control: Control): string {
  if (control.kind === 'select') {
    const select = control.element as HTMLSelectElement
    return select.selectedIndex < 0 ? '' : (optionsOf(control)[select.selectedIndex] ?? '')
  }
  if (control.kind === 'radio') {
    const at = control.elements.findIndex((radio) => (radio as HTMLInputElement).checked)
    return at < 0 ? '' : (optionsOf(control)[at] ?? '')
  }
  const input = control.element as HTMLInputElement
  if (control.kind === 'checkbox') return input.checked ? checked : notChecked
  return input.value
}

/** Whether nothing has been entered yet: an empty text, no radio chosen, a select at its prompt, an open tick. */
export function empty(control: Control): boolean {
  if (control.kind === 'checkbox') return !(control.element as HTMLInputElement).checked
  if (control.kind === 'select') {
    const select = control.element as HTMLSelectElement
    const option = select.options[select.selectedIndex]
    return !option || option.value === '' || (select.selectedIndex === 0 && option.disabled)
  }
  return shown(control).trim() === ''
}

/** What the page says is wrong with the control: the browser's own message, or the text that aria points to. */
export function complaint(control: Control): string {
  for (const element of control.elements) {
    if (element.getAttribute('aria-invalid') === 'true') {
      const ids = `${element.getAttribute('aria-errormessage') ?? ''} ${element.getAttribute('aria-describedby') ?? ''}`
      const root = element.getRootNode() as Document | ShadowRoot
      const text = ids
        .split(/\s+/)
        .map((id) => (id ? root.getElementById(id) : null))
        .map((node) => (node ? tidy(textIn(node)) : ''))
        .filter(Boolean)
        .join(' ')
      return text || 'marked as not valid'
    }
    const message = (element as HTMLInputElement).validationMessage
    if (message) return message
  }
  return ''
}

export interface Patience {
  /** Milliseconds without any change of the page that count as settled. */
  quiet: number
  /** Milliseconds after which waiting ends anyway. */
  limit: number
}

/** Waits until the page has not changed for a while, at most `limit`; ends at once when the signal is aborted. */
export function settle(nodes: readonly Node[], { quiet, limit }: Patience, signal?: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const ends = new AbortController()
    const end = () => {
      ends.abort()
      observer.disconnect()
      clearTimeout(calm)
      clearTimeout(bound)
      resolve()
    }
    const observer = new MutationObserver(() => {
      clearTimeout(calm)
      calm = setTimeout(end, quiet)
    })
    let calm = setTimeout(end, quiet)
    const bound = setTimeout(end, limit)
    const roots = nodes.flatMap((node) => [node.getRootNode(), node.ownerDocument ?? node])
    for (const root of new Set(roots))
      observer.observe(root, { subtree: true, childList: true, attributes: true, characterData: true })
    if (signal?.aborted) end()
    else signal?.addEventListener('abort', end, { signal: ends.signal })
  })
}
