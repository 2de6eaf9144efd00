/** Which kind of control an element is, by the standards: HTML for native controls, ARIA for drawn ones. */
import { nameOf } from './names.ts'
import type { ControlKind } from '../schema.ts'
import { all, byId, is, upward } from './dom.ts'
import { hiddenBecause } from './visible.ts'

export const native: Record<string, ControlKind> = {
  text: 'text',
  search: 'text',
  tel: 'text',
  url: 'text',
  email: 'text',
  number: 'number',
  date: 'date',
  time: 'time',
  'datetime-local': 'date-time',
  month: 'month',
  range: 'slider',
  radio: 'radio',
  checkbox: 'checkbox',
  file: 'file',
}

const datePart = /\b(month|day|year)\b/i
const popsUp = /^(listbox|tree)$/
const drawsDate = /\bdate\b|\b[md]{1,2}[/. -][md]{1,2}[/. -]y{2,4}\b|\by{4}[/. -]m{1,2}/i
const asksEnter = /\b(press|hit|type)\b.{0,20}\b(enter|return|comma)\b|\bcomma[- ]separated\b|\b(tags?|chips?)\b/i

/** Elements that are drawn as a control by role, without being native ones. */
export const drawn =
  '[role=combobox], [role=listbox], [role=radiogroup], [role=checkbox], [role=switch], [role=slider], ' +
  '[role=spinbutton], [contenteditable]:not([contenteditable=false]), button[aria-haspopup], button[aria-pressed]'

const holdsNativeTick = (element: Element) =>
  [...element.querySelectorAll('input[type=checkbox], input[type=radio]')].some((each) => each.checkVisibility())

/** Text fields that turn what was typed into a chip when Enter or a comma is typed. */
export function takesChips(input: HTMLInputElement): boolean {
  const root = input.getRootNode() as Document | ShadowRoot
  const described = (input.getAttribute('aria-describedby') ?? '').split(/\s+/)
  const help = described.map((id) => byId(root, id)?.textContent ?? '')
  if (asksEnter.test([input.placeholder, input.title, ...help].join(' '))) return true
  let at: Element | null = input
  for (let level = 0; at && level < 4; level++, at = upward(at))
    if (
      /(^|[\s_-])(chips?|tags?|tokens?)([_-]?(input|field|list|box))?($|[\s_-])/i.test(
        Element.prototype.getAttribute.call(at, 'class') ?? '',
      )
    )
      return true
  return false
}

/** The elements of one drawn control and its kind; nothing when the element is none or part of another. */
export function recognise(element: HTMLElement): { kind: ControlKind; elements: HTMLElement[] } | undefined {
  const role = element.getAttribute('role')
  const one = (kind: ControlKind) => ({ kind, elements: [element] })
  switch (role) {
    case 'combobox':
      // The older pattern puts the role on a box around the text field.
      return element.querySelector('input:not([type=hidden])[aria-autocomplete], [role=combobox]')
        ? undefined
        : one('combobox')
    case 'listbox':
      return element.querySelector('[role=option]') ? one('listbox') : undefined
    case 'radiogroup': {
      const radios = [...element.querySelectorAll<HTMLElement>('[role=radio]')].filter((each) => !holdsNativeTick(each))
      return radios.length > 0 ? { kind: 'radio', elements: radios } : undefined
    }
    case 'checkbox':
      return holdsNativeTick(element) ? undefined : one('checkbox')
    case 'switch':
      return holdsNativeTick(element) ? undefined : one('toggle')
    case 'slider':
      return one('slider')
    case 'spinbutton': {
      const group = element.closest('[role=group], fieldset') ?? upward(element)
      const parts = (group ? all(group, '[role=spinbutton]') : []).filter((each) => datePart.test(partName(each)))
      if (parts.length < 2 || !parts.includes(element)) return one('spinbutton')
      return parts[0] === element ? { kind: 'date-sections', elements: parts } : undefined
    }
  }
  if (element.localName === 'button') {
    const opens = element.getAttribute('aria-haspopup') ?? ''
    if (popsUp.test(opens)) return besideField(element) ? undefined : one('combobox')
    if (/^(dialog|grid)$/.test(opens))
      return drawsDate.test(nameOf(element)) && !besideField(element) ? one('calendar') : undefined
    return element.hasAttribute('aria-pressed') && !element.closest('[role=toolbar], [class*=toolbar]')
      ? one('toggle')
      : undefined
  }
  if (element.isContentEditable && !element.parentElement?.isContentEditable) return one('rich-text')
  return undefined
}

/** A button that opens what the one field beside it can take typed. */
function besideField(button: Element): boolean {
  for (let at = upward(button), level = 0; at && level < 2; at = upward(at), level++) {
    if (is(at, 'form, fieldset, body, main, section')) return false
    const fields = all(at, 'input:not([type=hidden]), [role=spinbutton], [role=combobox]').filter(
      (each) => each !== button && !hiddenBecause(each),
    )
    if (fields.length > 0) return true
  }
  return false
}

/** What a section of a date or a box is called: month, day or year. */
export function partName(element: Element): string {
  return `${element.getAttribute('aria-label') ?? ''} ${element.getAttribute('data-type') ?? ''} ${element.getAttribute('aria-placeholder') ?? ''}`
}

/** A field that only opens a calendar: it cannot be typed into. */
export function opensCalendar(input: HTMLInputElement): boolean {
  return (
    input.readOnly &&
    (/^(dialog|grid)$/.test(input.getAttribute('aria-haspopup') ?? '') ||
      drawsDate.test(`${nameOf(input)} ${input.placeholder}`))
  )
}
