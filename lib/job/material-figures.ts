/** Figures, and the limit and verdict on one of them, as a form can be filled with them. */
import type { Item, Quantity } from '../form/material.ts'
import type { Verdict, Withheld } from '../limits/index.ts'
import { decimalsOf, labelOf } from '../reduce/figures/index.ts'
import type { Report } from '../reduce/report.ts'
import { convert } from '../units/convert.ts'
import { choices } from './options.ts'
import { term } from '../words/term.ts'

/** How far below a limit that must not be reached the numbers end that are below it. */
const JUST_BELOW = 1 - 1e-9

/** By id, without the group before it. Without a verdict its item is empty, with the reason. */
export function figureItems(
  group: string,
  figures: Report['figures'],
  { verdict, withheld }: { verdict?: Verdict | undefined; withheld?: Withheld | undefined } = {},
): Record<string, Item> {
  const limit = verdict?.limit
  const quantity = (label: string, id: string, value: number, unit: string): Quantity => ({
    kind: 'quantity',
    label,
    group,
    value,
    unit,
    decimals: decimalsOf(id, unit),
  })
  const items: Record<string, Item> = {}
  for (const [id, { value, unit }] of Object.entries(figures)) {
    // Of ducts this is duct-flow-25 under another id: one number is offered once.
    if (id === 'flow-25' && 'duct-flow-25' in figures) continue
    const item = quantity(labelOf(id, unit), id, value, unit)
    items[id] = item
    if (limit?.figure !== id) continue
    const bound = convert(limit.value, limit.unit, unit)
    // What equals the limit is entered as the limit, whatever the last bit of its double says.
    items[id] = {
      ...item,
      value: verdict?.value === limit.value ? bound : value,
      limit: limit.comparison === '<' ? bound * JUST_BELOW : bound,
    }
  }
  const options = [...choices.verdict]
  if (withheld) {
    const empty = (label: string): Item => ({
      kind: 'choice',
      label,
      group,
      value: '',
      options,
      why: withheld.withheld,
    })
    const { figure, unit } = withheld.limit
    return { ...items, limit: empty(`limit of ${labelOf(figure, unit)}`), verdict: empty(term`verdict`) }
  }
  if (!verdict || !limit) return items
  return {
    ...items,
    limit: quantity(`limit of ${labelOf(limit.figure, limit.unit)}`, limit.figure, limit.value, limit.unit),
    verdict: { kind: 'choice', label: term`verdict`, group, value: verdict.meets ? 'pass' : 'fail', options },
  }
}
