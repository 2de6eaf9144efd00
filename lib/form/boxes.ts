/** Three boxes for the day, month and year of one date, taken together as one control. */
import type { Control } from './controls.ts'
import { datePattern } from './date-part.ts'
import { holds, is, upward } from './dom.ts'
import { groupName, sectionOf } from './names.ts'

/** The element around all of them, when it holds no other control. */
function alone(parts: readonly Control[], controls: readonly Control[]): Element | undefined {
  const elements = parts.map(({ element }) => element)
  let around = elements[0] ? upward(elements[0]) : null
  while (around && !elements.every((each) => around && holds(around, each))) around = upward(around)
  if (!around || is(around, 'form, body, main')) return undefined
  return controls.some((each) => !parts.includes(each) && around?.contains(each.element)) ? undefined : around
}

/** The list with every date in three boxes as one control at the place of its first box. */
export function groupBoxes(controls: readonly Control[]): Control[] {
  const result: Control[] = []
  let position = 0
  for (let at = 0; at < controls.length; at++) {
    const parts = controls.slice(at, at + 3)
    const kinds = new Set(parts.map(datePattern))
    const first = controls[at] as Control
    if (parts.length < 3 || kinds.size < 3 || kinds.has(undefined) || !alone(parts, controls)) {
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
