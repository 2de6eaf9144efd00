/**
 * Controls that components tell the browser of by their ElementInternals alone: no script but their own can ask for the
 * role, so it is taken from the element's name, and what is on from what the element shows of its state.
 */
import { is, own } from './dom.ts'
import { flatAll, flatChildren } from './flat.ts'
import { rootOf } from './shadow.ts'
import { entriesOf } from './handed-in.ts'

const names: readonly (readonly [RegExp, 'radio' | 'checkbox' | 'toggle' | 'slider'])[] = [
  [/-radio(-button)?$/, 'radio'],
  [/-checkbox$/, 'checkbox'],
  [/-(switch|toggle)$/, 'toggle'],
  [/-slider$/, 'slider'],
]

/** What says by itself that it is a control. */
const speaks = 'input:not([type=hidden]), [role], button, select, textarea'

export type BareKind = (typeof names)[number][1]

/** The kind of a component that can have the focus and holds nothing that says what it is. */
export function bareKind(element: Element): BareKind | undefined {
  const name = own(element, 'localName')
  if (!name.includes('-')) return undefined
  const kind = names.find(([wording]) => wording.test(name))?.[1]
  if (!kind || !is(element, '[tabindex]:not([role])')) return undefined
  const inner = rootOf(element) ? [...flatChildren(element)] : []
  return inner.length > 0 && flatAll(element, speaks).every((each) => is(each, '[role=presentation], [role=img]'))
    ? kind
    : undefined
}

/** Whether a component is on: by a state of its own, by what a form would submit for it, else by what it draws. */
export function bareOn(element: Element): boolean {
  try {
    if (is(element, ':state(checked)')) return true
  } catch {
    // The browser knows no states of components.
  }
  const name = element.getAttribute('name')
  const form = element.closest('form')
  if (name && form) {
    const values = entriesOf(form)?.getAll(name) ?? []
    if (values.length > 0) return values.includes(element.getAttribute('value') ?? 'on')
  }
  if (rootOf(element)?.querySelector('.checked, .selected, [checked], [aria-checked=true]')) return true
  return element.hasAttribute('checked')
}

/** What a form would submit for a component under its name. */
export function bareValue(element: Element): string | undefined {
  const form = element.closest('form')
  const value = form && entriesOf(form)?.get(element.getAttribute('name') ?? '')
  return typeof value === 'string' ? value : (element.getAttribute('value') ?? undefined)
}
