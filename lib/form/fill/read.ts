/** Reading what a control shows, and waiting until the page has settled. */
import { cut } from '../../bounds.ts'
import { optionElements, optionLabel, optionsOf } from '../page/clues.ts'
import { alive, byId } from '../page/dom.ts'
import type { Control } from '../page/controls.ts'
import { handedIn } from '../page/handed-in.ts'
import { datePatternIn } from '../page/hints.ts'
import { tickKinds } from '../kind-traits.ts'
import { textIn } from '../page/names.ts'
import { readAnyDate } from '../kinds/calendar/read.ts'
import { bareValue } from '../page/bare.ts'
import { chipTexts, looseText, saysChips } from '../page/chips.ts'
import { behindBox, boxText } from '../kinds/combobox/read.ts'
import { dateShown } from '../kinds/date-parts.ts'
import { richText } from '../kinds/rich-text/read.ts'
import { isOn } from '../kinds/tick.ts'
import { checked, notChecked } from '../tick-words.ts'
import { tidy } from '../words.ts'
import { say } from '../../words/say.ts'

/** What a control holds now, in the wording of a plan: the text, the option's label, `checked` or `not checked`. */
export function shown(control: Control): string {
  if (control.far) return control.far.image.shown
  const { element } = control
  switch (control.kind) {
    case 'select':
      return optionsOf(control)[(element as HTMLSelectElement).selectedIndex] ?? ''
    case 'multiple': {
      const options = optionsOf(control)
      return [...(element as HTMLSelectElement).options]
        .flatMap((each, at) => (each.selected ? (options[at] ?? '') : []))
        .join('; ')
    }
    case 'listbox':
      return optionElements(element).filter(isOn).map(optionLabel).join('; ')
    case 'radio':
      return optionsOf(control)[control.elements.findIndex(isOn)] ?? ''
    case 'checkbox':
    case 'toggle':
      return isOn(element) ? checked : notChecked
    case 'combobox':
      return boxText(element)
    case 'date-boxes':
    case 'date-sections':
      return dateShown(control)
    case 'calendar': {
      const text = element.localName === 'input' ? (element as HTMLInputElement).value : boxText(element)
      return text && (readAnyDate(text, datePatternIn(control)) ?? text)
    }
    case 'slider':
    case 'spinbutton':
      return element.localName === 'input'
        ? (element as HTMLInputElement).value
        : (element.getAttribute('aria-valuenow') ?? (element.localName.includes('-') ? bareValue(element) : '') ?? '')
    case 'chips':
      return chipTexts(element).join('; ') || looseText(element)
    case 'rich-text':
      return richText(element)
    case 'file':
      return [...((element as HTMLInputElement).files ?? [])].map(({ name }) => name).join('; ')
    default:
      return (element as HTMLInputElement).value
  }
}

/** What the page would submit, where that is held apart from what is seen; nothing where both are one. */
export function behind(control: Control): string | undefined {
  if (control.far) return undefined
  // What stands loose in a field of chips is not entered yet.
  if (control.kind === 'chips')
    return looseText(control.element) && saysChips(control.element) ? chipTexts(control.element).join('; ') : undefined
  return control.kind === 'combobox' ? behindBox(control.element) : handedIn(control, shown(control))
}

/** Whether nothing has been entered yet: an empty text, no radio chosen, a select at its prompt, an open tick. */
export function empty(control: Control): boolean {
  if (control.far) return control.far.image.empty
  if (tickKinds.has(control.kind)) return !isOn(control.element)
  if (control.kind === 'slider') return false
  if (control.kind === 'select') {
    const select = control.element as HTMLSelectElement
    const option = select.options[select.selectedIndex]
    return !option || option.value === '' || (select.selectedIndex === 0 && option.disabled)
  }
  return shown(control).trim() === ''
}

/** What the page says is wrong with the control: the browser's own message, or the text that aria points to. */
export function complaint(control: Control): string {
  if (control.far) return control.far.image.complaint
  for (const element of control.elements) {
    if (element.getAttribute('aria-invalid') === 'true') {
      const ids = `${element.getAttribute('aria-errormessage') ?? ''} ${element.getAttribute('aria-describedby') ?? ''}`
      const root = element.getRootNode() as Document | ShadowRoot
      const text = ids
        .split(/\s+/)
        .map((id) => byId(root, id))
        .map((node) => (node ? tidy(textIn(node)) : ''))
        .filter(Boolean)
        .join(' ')
      return cut(text) || say`marked as not valid`
    }
    const message = (element as HTMLInputElement).validationMessage
    if (message) return cut(message)
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
    const roots = nodes.filter(alive).flatMap((node) => [node.getRootNode(), node.ownerDocument ?? node])
    for (const root of new Set(roots))
      observer.observe(root, { subtree: true, childList: true, attributes: true, characterData: true })
    if (signal?.aborted) end()
    else signal?.addEventListener('abort', end, { signal: ends.signal })
  })
}
