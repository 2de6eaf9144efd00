import type { Control } from '../../form/page/controls.ts'
import type { Item, Material } from '../../form/material.ts'
import type { Write } from '../../form/schema.ts'
import { propose, testsInDoubt } from '../../form/map/propose.ts'
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
  score: number
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

/** The likely items for a control, best first. `test`: of which the page is, as the person says. */
export function proposalsFor(
  control: Control,
  material: Material,
  controls: readonly PageControl[],
  suggestions: Suggestions,
  test: string,
): Proposal[] {
  return propose(suggestions.of(control), takenItems(controls, control), test)
    .slice(0, few)
    .flatMap(({ item: id, reason, clear, score }) => {
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
          score,
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

/** A control for which nothing is clear, and what it may ask for, best first. */
export interface UnsureProposal {
  key: string
  control: Control
  rows: Proposal[]
}

export interface AllProposals {
  clear: ClearProposal[]
  unsure: UnsureProposal[]
}

/** A proposal worse than this is found in the list of all items as soon. */
const worth = 0.45

/**
 * The proposals for all controls not bound yet: those that are clear, and for the others what comes near. An item that
 * two controls would clearly take goes to neither by itself.
 */
export function proposalsForAll(
  controls: readonly PageControl[],
  material: Material,
  suggestions: Suggestions,
  test: string,
): AllProposals {
  const open = controls
    .filter(({ binding }) => !binding)
    .map(({ key, control }) => ({ key, control, rows: proposalsFor(control, material, controls, suggestions, test) }))
  const best = open.flatMap(({ key, control, rows }): ClearProposal[] => {
    const row = rows.find((proposal) => proposal.clear)
    return row ? [{ key, control, row, reason: row.reason, write: row.write }] : []
  })
  const clear = best.filter(({ row }) => best.filter((other) => other.row.id === row.id).length === 1)
  const taken = new Set(clear.map(({ row }) => row.id))
  const unsure = open
    .filter(({ key }) => !clear.some((each) => each.key === key))
    .map(({ key, control, rows }) => ({
      key,
      control,
      rows: rows.filter(({ id, score }) => score >= worth && !taken.has(id)),
    }))
    .filter(({ rows }) => rows.length > 0)
  return { clear, unsure }
}

/** A test of which the page may be. */
export interface TestInDoubt {
  id: string
  name: string
}

/** The tests of which the page may be, as long as it does not say of which; none or several. */
export function testsOf(
  controls: readonly PageControl[],
  { items }: Material,
  suggestions: Suggestions,
): TestInDoubt[] {
  return testsInDoubt(controls.map(({ control }) => suggestions.of(control))).map((id) => {
    const own = Object.keys(items).find((key) => key.startsWith(`${id}/`))
    return { id, name: roleWords((own && items[own]?.group) || id) }
  })
}
