/** Whether a control may be written at this very moment, by the browser's own answers: asked before each key. */
import { say } from '../../words/say.ts'
import { alive, is, own } from './dom.ts'

/** Words of the HTML standard by which a page says that a field is for what is never touched. */
const secret = /(^|\s)(cc-|\w+-password|one-time-code)/i

/** The kind as the browser has it, past any property that the page put over it. */
const typeOf = (element: Element): string =>
  own(element, 'localName') === 'input' ? (Reflect.get(HTMLInputElement.prototype, 'type', element) as string) : ''

/** Whether a control is for a password or for payment: by its type, by its autofill word, by the dots in place of its text. */
export function secretOf(element: Element): 'password' | 'payment' | undefined {
  if (typeOf(element) === 'password') return 'password'
  const autofill = Element.prototype.getAttribute.call(element, 'autocomplete') ?? ''
  const [, , word = ''] = secret.exec(autofill) ?? []
  // Libraries write `new-password` on the search box of a drawn list, only to keep the browser from filling it.
  if (word && !(/^new-/i.test(word) && is(element, '[role=combobox]')))
    return word.toLowerCase().startsWith('cc-') ? 'payment' : 'password'
  const { webkitTextSecurity: dots = 'none' } = getComputedStyle(element) as { webkitTextSecurity?: string }
  return is(element, 'input, textarea') && dots !== 'none' ? 'password' : undefined
}

/** Why the control may not be written now; nothing when it may. */
export function barred(element: Element): string | undefined {
  if (!alive(element)) return say`is no longer on the page`
  const kind = secretOf(element)
  if (kind) return kind === 'password' ? say`is for a password now` : say`is for payment now`
  if (/^(hidden|submit|image|reset|button)$/.test(typeOf(element))) return say`is of another kind now`
  if (is(element, ':disabled, [aria-disabled=true], [inert], [inert] *')) return say`is disabled by the page`
  return undefined
}

/** @throws Error when the control may not be written now: nothing more goes into it. */
export function gate(element: Element): void {
  const why = barred(element)
  if (why !== undefined) throw new Error(why)
}
