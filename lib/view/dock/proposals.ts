import type { Control } from '../../form/page/controls.ts'
import type { Item, Material } from '../../form/material.ts'
import type { Write } from '../../form/schema.ts'
import { propose } from '../../form/map/propose.ts'
import { textOf } from '../../form/fill/text.ts'
import { writeFor } from '../../form/map/write-for.ts'
import { symbol } from '../../units/symbol.ts'
import { asRead } from '../../results/in-locale.ts'
import type { ItemRow } from './item-list.tsx'
import type { PageControl } from './use-controls.ts'
import type { Suggestions } from './use-suggestions.ts'
import { labelWords, roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

/** How many proposals stand above the full list. */
const few = 3

export interface Proposal extends ItemRow {
  write: Write
  clear: boolean
}

/** The item's value for a reader, with its unit; empty while the job has none. */
function valueOf(id: string, item: Item, material: Material): string {
  const write: Write = item.kind === 'quantity' ? { grouping: ',' } : {}
  const text = textOf({ from: 'item', item: id, write }, material, { kind: 'text', options: [] })
  if ('refused' in text) return ''
  return item.kind === 'quantity' ? `${asRead(text.text)} ${symbol(item.unit)}`.trim() : text.text
}

/** Every item of the material as a row, grouped as the material groups them. */
export function itemRows(material: Material): ItemRow[] {
  const rows = Object.entries(material.items).map(([id, item]): ItemRow => ({
    id,
    group: roleWords(item.group),
    label: labelWords(item.label),
    value: valueOf(id, item, material),
    reason: '',
  }))
  const groups = [...new Set(rows.map(({ group }) => group))]
  return groups.flatMap((group) => rows.filter((row) => row.group === group))
}

/** Items that are bound already, with the words for where. */
function takenItems(controls: readonly PageControl[], but?: Control): Map<string, string> {
  const taken = new Map<string, string>()
  for (const [index, { binding, control }] of controls.entries()) {
    if (binding?.source.from === 'item' && control !== but) taken.set(binding.source.item, say`control ${index + 1}`)
  }
  return taken
}

/** The likely items for a control, best first. */
export function proposalsFor(
  control: Control,
  material: Material,
  controls: readonly PageControl[],
  suggestions: Suggestions,
): Proposal[] {
  return propose(suggestions.of(control), takenItems(controls, control))
    .slice(0, few)
    .flatMap(({ item: id, reason, clear }) => {
      const item = material.items[id]
      if (!item) return []
      return [
        {
          id,
          group: roleWords(item.group),
          label: labelWords(item.label),
          value: valueOf(id, item, material),
          reason,
          write: writeFor(item, control),
          clear,
        },
      ]
    })
}

export interface ClearProposal {
  key: string
  control: Control
  row: ItemRow
  reason: string
  write: Write
}

/** The clear proposals for all controls not bound yet; an item that two controls would take goes to neither. */
export function clearProposals(
  controls: readonly PageControl[],
  material: Material,
  suggestions: Suggestions,
): ClearProposal[] {
  const clear = controls
    .filter(({ binding }) => !binding)
    .flatMap(({ key, control }): ClearProposal[] => {
      const best = proposalsFor(control, material, controls, suggestions).find((proposal) => proposal.clear)
      return best ? [{ key, control, row: best, reason: best.reason, write: best.write }] : []
    })
  return clear.filter(({ row }) => clear.filter((other) => other.row.id === row.id).length === 1)
}
