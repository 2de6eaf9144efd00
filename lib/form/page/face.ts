/** What a person sees of a control whose own element is transparent, clipped or tiny: its label, or the box around it. */
import { anyControl } from './names.ts'
import { all, first, is, upward } from './dom.ts'
import { labelsOf } from './labels.ts'
import { hiddenBecause } from './visible.ts'

/** Kinds of elements that pages hide behind a look of their own. Others count as hidden when they are. */
const behind = 'input[type=checkbox], input[type=radio], input[type=range], input[type=file], [role=combobox], select'

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
