/** Figures, and the limit and verdict on one of them, as a form can be filled with them. */
import type { Item, Quantity } from '../form/material.ts'
import type { Verdict } from '../limits/index.ts'
import { decimalsOf, labelOf } from '../reduce/figures/index.ts'
import type { Report } from '../reduce/report.ts'
import { convert } from '../units/convert.ts'
import { choices } from './options.ts'
import { term } from '../words/term.ts'

/** By id, without the group before it. */
export function figureItems(group: string, figures: Report['figures'], verdict?: Verdict): Record<string, Item> {
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
    items[id] = limit?.figure === id ? { ...item, limit: convert(limit.value, limit.unit, unit) } : item
  }
  if (!verdict || !limit) return items
  const options = [...choices.verdict]
  return {
    ...items,
    limit: quantity(`limit of ${labelOf(limit.figure, limit.unit)}`, limit.figure, limit.value, limit.unit),
    verdict: { kind: 'choice', label: term`verdict`, group, value: verdict.meets ? 'pass' : 'fail', options },
  }
}
