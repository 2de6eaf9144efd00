/** What a form would submit for a control that an element of the page's own draws and answers for. */
import type { Control } from './controls.ts'
import { sameness } from '../same.ts'
import type { ControlKind } from '../schema.ts'
import { alike } from '../words.ts'

const compared: ReadonlySet<ControlKind> = new Set(['text', 'number', 'textarea', 'spinbutton', 'slider'])

const unheard = (event: Event): void => event.stopImmediatePropagation()

/**
 * The entries of a form as the browser collects them. Pages hear of that too, and some send the form at it: none hears
 * of this.
 */
export function entriesOf(form: HTMLFormElement): FormData | undefined {
  const ends = new AbortController()
  for (const target of [form.ownerDocument.defaultView, Node.prototype.getRootNode.call(form)])
    target?.addEventListener('formdata', unheard, { capture: true, signal: ends.signal })
  try {
    return new FormData(form)
  } catch {
    // While the page itself collects them, nobody else can.
    return undefined
  } finally {
    ends.abort()
  }
}

const bare = (text: string): string => text.replace(/[^\p{L}\p{N}]+/gu, '').toLowerCase()

/** The same but for marks, or texts that share a word, as a code and its name do; two numbers must be one. */
const meansSame = (one: string, other: string): boolean =>
  sameness(one, other) !== 'different' ||
  bare(one) === bare(other) ||
  (!(/^[-\d.,\s]+$/.test(one) && /^[-\d.,\s]+$/.test(other)) && alike(one, other) > 0)

/** What would be submitted where it is something else than what is shown; nothing where it means the same. */
export function handedIn({ element, kind }: Control, shown: string): string | undefined {
  if (!compared.has(kind) || shown === '') return undefined
  let at: Element | undefined = element
  while (at) {
    const name = at.localName.includes('-') ? at.getAttribute('name') : null
    const form = name === null ? null : at.closest('form')
    if (name !== null && form) {
      const values = entriesOf(form)
        ?.getAll(name)
        .filter((value) => typeof value === 'string')
      return !values?.length || values.some((value) => meansSame(value, shown)) ? undefined : values.join('; ')
    }
    const root: Node = Node.prototype.getRootNode.call(at)
    at = 'host' in root ? (root.host as Element) : undefined
  }
  return undefined
}
