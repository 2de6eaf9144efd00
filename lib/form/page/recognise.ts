/** Which kind of control an element is, by the standards: HTML for native controls, ARIA for drawn ones. */
import { nameOf } from './names.ts'
import type { ControlKind } from '../schema.ts'
import { bareKind } from './bare.ts'
import { saysChips } from './chips.ts'
import { all, is, own, upward } from './dom.ts'
import { lookOf } from './face.ts'
import { flatAll } from './flat.ts'
import { hiddenBecause, parentOf } from './visible.ts'
import { tidy } from '../words.ts'

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

/** Elements that are drawn as a control by role, without being native ones. */
export const drawn =
  '[role=combobox], [role=listbox], [role=radiogroup], [role=checkbox], [role=switch], [role=slider], ' +
  '[role=spinbutton], [role=radio], [contenteditable]:not([contenteditable=false]), button[aria-haspopup], ' +
  'button[aria-pressed], button[aria-expanded], [role=button][aria-haspopup]'

/** Whether the tick inside a drawn one is what a person uses: it is seen, or the drawn one cannot have the focus. */
const holdsNativeTick = (element: Element) =>
  [...element.querySelectorAll('input[type=checkbox], input[type=radio]')].some(
    (each) => each.checkVisibility() && !(element.hasAttribute('tabindex') && hiddenBecause(each)),
  )

const ticks = '[role=radio], [role=checkbox], [role=switch]'

/** Whether a native tick only stands behind a drawn one that is used in its place. */
export function keptInDrawn(input: Element): boolean {
  const around = upward(input)?.closest(ticks)
  if (around) return !holdsNativeTick(around)
  const before = own(input, 'previousElementSibling')
  return Boolean(before && is(before, ticks) && before.hasAttribute('tabindex') && is(input, '[aria-hidden=true]'))
}

/** What a button says that opens a calendar: a request for a date, the order of one, or the date itself. */
const picksDate =
  /\b(pick|select|choose|set|enter)\b.{0,20}\bdate\b|\b[md]{1,2}[/. -][md]{1,2}[/. -]y{2,4}\b|\b\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}\b|\b\d{1,2},? \d{4}\b/i

const isRadio = (element: Element): boolean =>
  (is(element, '[role=radio]') && !holdsNativeTick(element)) || bareKind(element) === 'radio'

/** The drawn radios of a group, wherever slots and shadow roots put them. */
function radiosIn(group: Element): HTMLElement[] {
  const inside = flatAll(group, '*')
  const radios = inside.filter(isRadio)
  const [first] = radios
  // Of the components of a group only one may take the focus.
  return first && bareKind(first) ? inside.filter(({ localName }) => localName === first.localName) : radios
}

/** The radios that stand with this one in a group of their own; nothing where the group says by its role what it is. */
function groupOf(radio: HTMLElement): HTMLElement[] | undefined {
  if (!isRadio(radio)) return undefined
  for (let at = parentOf(radio), level = 0; at && level < 12; at = parentOf(at), level++) {
    if (is(at, '[role=radiogroup]')) return undefined
    if (is(at, 'fieldset, [role=group]') || /radio-?group$/.test(own(at, 'localName'))) return radiosIn(at)
  }
  // Components name the radios of a group as the standard has it.
  const root = Node.prototype.getRootNode.call(radio)
  const component = own(radio, 'localName').includes('-') || !('host' in root) ? radio : (root.host as Element)
  const name = component.getAttribute('name')
  const among = component.closest('form') ?? component.ownerDocument.body
  const named = all(among, own(component, 'localName')).filter((each) => name && each.getAttribute('name') === name)
  return named.length > 1 ? named.flatMap((each) => (isRadio(each) ? [each] : radiosIn(each))) : [radio]
}

/** The elements of one drawn control and its kind; nothing when the element is none or part of another. */
export function recognise(element: HTMLElement): { kind: ControlKind; elements: HTMLElement[] } | undefined {
  const role = element.getAttribute('role')
  const one = (kind: ControlKind) => ({ kind, elements: [element] })
  switch (role) {
    case 'combobox':
      // The older pattern puts the role on a box around the text field.
      return all(element, 'input:not([type=hidden])[aria-autocomplete], [role=combobox]').some(
        (each) => !hiddenBecause(each) || lookOf(each),
      )
        ? undefined
        : one('combobox')
    case 'listbox':
      return element.querySelector('[role=option]') ? one('listbox') : undefined
    case 'radiogroup': {
      const radios = radiosIn(element)
      return radios.length > 0 ? { kind: 'radio', elements: radios } : undefined
    }
    case 'radio': {
      const radios = groupOf(element)
      return radios?.[0] === element ? { kind: 'radio', elements: radios } : undefined
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
  const bare = bareKind(element)
  if (bare === 'radio') {
    const radios = groupOf(element)
    return radios?.[0] === element ? { kind: 'radio', elements: radios } : undefined
  }
  if (bare) return one(bare)
  if (element.localName === 'button' || role === 'button') {
    const opens = element.getAttribute('aria-haspopup') ?? ''
    if (popsUp.test(opens)) return besideField(element) ? undefined : one('combobox')
    if (/^(dialog|grid)$/.test(opens))
      return drawsDate.test(nameOf(element)) && !besideField(element) ? one('calendar') : undefined
    if (opens === '' && element.hasAttribute('aria-expanded') && picksDate.test(tidy(element.textContent ?? '')))
      return besideField(element) ? undefined : one('calendar')
    return element.hasAttribute('aria-pressed') && !element.closest('[role=toolbar], [class*=toolbar]')
      ? one('toggle')
      : undefined
  }
  if (element.isContentEditable && !element.parentElement?.isContentEditable)
    return role === 'textbox' && saysChips(element) ? one('chips') : one('rich-text')
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

/** A field of a component for choices: it cannot be typed into, and a press on it opens the list. */
export function opensList(input: HTMLInputElement): boolean {
  if (!input.readOnly) return false
  for (let at = parentOf(input), level = 0; at && level < 12; at = parentOf(at), level++)
    if (/-(select|dropdown|combo-?box)$/.test(own(at, 'localName'))) return true
  return false
}
