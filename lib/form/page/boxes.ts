/** Three boxes for the day, month and year of one date, taken together as one control. */
import type { Control } from './controls.ts'
import { datePattern } from './date-part.ts'
import { holds, is, own, upward } from './dom.ts'
import { groupName, sectionOf } from './names.ts'

/** Whether another control stands inside the element, as far as one sees from inside it. */
function holdsOther(around: Element, parts: readonly Control[], controls: ReadonlySet<Node>): boolean {
  const mine = new Set<Node>(parts.map(({ element }) => element))
  const walker = own(around, 'ownerDocument').createTreeWalker(around, NodeFilter.SHOW_ELEMENT)
  while (walker.nextNode()) if (controls.has(walker.currentNode) && !mine.has(walker.currentNode)) return true
  return false
}

/** Whether the element around all of them holds no other control. `beside`: the controls right before and after. */
function alone(parts: readonly Control[], beside: readonly (Control | undefined)[], all: ReadonlySet<Node>): boolean {
  const elements = parts.map(({ element }) => element)
  let around = elements[0] ? upward(elements[0]) : null
  while (around && !elements.every((each) => around && holds(around, each))) around = upward(around)
  if (!around || is(around, 'form, body, main')) return false
  const box = around
  // The neighbours first: a page may have thousands of dates in one element.
  return !beside.some((each) => each && holds(box, each.element)) && !holdsOther(box, parts, all)
}

/** The list with every date in three boxes as one control at the place of its first box. */
export function groupBoxes(controls: readonly Control[]): Control[] {
  const result: Control[] = []
  const all = new Set<Node>(controls.map(({ element }) => element))
  const patterns = controls.map(datePattern)
  let position = 0
  for (let at = 0; at < controls.length; at++) {
    const parts = controls.slice(at, at + 3)
    const kinds = new Set(patterns.slice(at, at + 3))
    const first = controls[at] as Control
    const beside = [controls[at - 1], controls[at + 3]]
    if (parts.length < 3 || kinds.size < 3 || kinds.has(undefined) || !alone(parts, beside, all)) {
      result.push(first)
      continue
    }
    const elements = parts.map(({ element }) => element)
    const name = groupName(elements)
    const section = sectionOf(elements, name)
    result.push({ kind: 'date-boxes', element: first.element, elements, name, section, position: position++, parts })
    at += 2
  }
  return result
}
