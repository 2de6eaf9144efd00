/** What a person sees of a control whose own element is transparent, clipped or tiny: its label, or the box around it. */
import { anyControl, textIn } from './names.ts'
import { all, first, holds, is, own, upward } from './dom.ts'
import { labelsOf } from './labels.ts'
import { hiddenBecause, parentOf } from './visible.ts'
import { tidy } from '../words.ts'

/** Kinds of elements that pages hide behind a look of their own. Others count as hidden when they are. */
const behind =
  'input[type=checkbox], input[type=radio], input[type=range], input[type=file], [role=combobox], [role=switch], ' +
  '[role=checkbox], [role=slider], select'

/** The controls inside an element that a person can meet, without those that a widget keeps for itself. */
function met(element: Element): Element[] {
  return all(element, anyControl).filter(
    (each) => !each.matches('[aria-hidden=true], [tabindex="-1"], button') && each.checkVisibility(),
  )
}

/** The parent that holds this control and no other, at most `levels` up. */
export function wrapperOf(element: Element, levels = 3): Element {
  let at = element
  for (let level = 0; level < levels; level++) {
    const parent = upward(at)
    if (!parent || is(parent, 'label, form, fieldset, table, tr, body, section, main')) break
    if (first(parent, ':scope > label, :scope > legend') && at !== element) break
    if (met(parent).some((each) => each !== element && !element.contains(each) && !each.contains(element))) break
    at = parent
  }
  return at
}

/** Fields that are typed into; a button of a form is none. */
export const typed =
  'textarea, input:not([type=checkbox], [type=radio], [type=range], [type=file], [type=hidden], [type=password], ' +
  '[type=submit], [type=button], [type=image], [type=reset], [role=combobox])'

/** Levels between a field and what is drawn around it in components that are made of components. */
const nested = 8

/**
 * The label that lies over a field which is transparent until it has the focus. Nothing for a field that is hidden in any
 * other way, whose label is not seen, or over the middle of which something else lies.
 */
function floatingLabel(field: HTMLElement): Element | undefined {
  if (!field.checkVisibility({ visibilityProperty: true }) || field.checkVisibility({ opacityProperty: true }))
    return undefined
  const name = tidy(field.getAttribute('aria-label') ?? '') || tidy(labelsOf(field).map(textIn).join(' '))
  const box = field.getBoundingClientRect()
  if (name === '' || box.width < 20 || box.height < 8) return undefined
  const liesOver = (label: Element): boolean => {
    const { left, right, top, bottom } = label.getBoundingClientRect()
    const [x, y] = [(left + right) / 2, (top + bottom) / 2]
    return bottom > top && x >= box.left && x <= box.right && y >= box.top - 4 && y <= box.bottom + 4
  }
  for (let at: Element | null = field, level = 0; at && level < nested; at = parentOf(at), level++) {
    if (is(at, 'form, fieldset, body, main')) return undefined
    // Whoever sees one label for two fields does not know which one is typed into.
    if (all(at, anyControl).some((each) => each !== field && is(each, typed))) return undefined
    const label = all(at, 'label, span, div, p, slot')
      .slice(0, 100)
      .find(
        (each) =>
          !holds(each, field) &&
          tidy(own(each, 'textContent') ?? '') === name &&
          !hiddenBecause(each) &&
          liesOver(each),
      )
    if (label) return label
  }
  return undefined
}

export function faceOf(element: HTMLElement): Element | undefined {
  return hiddenBecause(element) ? lookOf(element) : element
}

/** What stands for an element that is not seen itself. */
export function lookOf(element: HTMLElement): Element | undefined {
  // The sections of an empty date often show only when the date has the focus; its box and label always do.
  if (element.matches('[role=spinbutton]')) {
    const group = element.closest('[role=group]')
    return group && !hiddenBecause(group) && element.checkVisibility() ? group : undefined
  }
  if (element.matches(typed)) return floatingLabel(element)
  if (!element.matches(behind)) return undefined
  const label = labelsOf(element).find((each) => !hiddenBecause(each))
  if (label && !element.matches('select, [role=combobox]')) return label
  if (!element.checkVisibility() || element.matches('[aria-hidden=true], select')) return undefined
  for (let at = upward(element), level = 0; at && level < 3; at = upward(at), level++) {
    if (is(at, 'form, fieldset, table, tr, body, section, main')) return undefined
    if (met(at).some((each) => each !== element)) return undefined
    // A box that shows nothing beside the hidden control is no look of its own, but a trap for programs.
    if (!hiddenBecause(at) && [...at.children].some((each) => each !== element && !hiddenBecause(each))) return at
  }
  return undefined
}
