import { useMemo, useState } from 'preact/hooks'
import { cluesOf } from './stand-ins.ts'
import type { Material } from '../../form/material.ts'
import type { Binding } from '../../form/schema.ts'
import { newId } from '../helper/new-id.ts'
import { clearProposals, type ClearProposal } from './proposals.ts'
import type { PageControl } from './use-controls.ts'
import type { Suggestions } from './use-suggestions.ts'

export interface Proposals {
  open: boolean
  show: (open: boolean) => void
  all: readonly ClearProposal[]
  left: ReadonlySet<string>
  leave: (key: string, leave: boolean) => void
  /** Bindings of those that were not taken out, each with the key of its control. */
  taken: () => (Binding & { key: string })[]
  count: number
  /** Whether they are still being looked for. */
  waiting: boolean
  /** Why there are none. */
  problem: string
}

/** The clear proposals while they are looked through together. */
export function useProposals(
  controls: readonly PageControl[],
  material: Material,
  suggestions: Suggestions,
): Proposals {
  const [open, setOpen] = useState(false)
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const all = useMemo(
    () => (open ? clearProposals(controls, material, suggestions) : []),
    [open, controls, material, suggestions],
  )
  const wanted = all.filter(({ key }) => !left.has(key))

  return {
    open,
    show: (now) => {
      setOpen(now)
      setLeft(new Set())
    },
    all,
    left,
    leave: (key, leave) => {
      const next = new Set(left)
      if (leave) next.add(key)
      else next.delete(key)
      setLeft(next)
    },
    taken: () =>
      wanted.map(({ key, control, row, write }) => ({
        id: newId(),
        key,
        control: cluesOf(control),
        source: { from: 'item', item: row.id, write },
      })),
    count: wanted.length,
    waiting: suggestions.waiting,
    problem: suggestions.problem,
  }
}
