import { useMemo, useState } from 'preact/hooks'
import { cluesOf } from './stand-ins.ts'
import type { Material } from '../../form/material.ts'
import type { Control } from '../../form/page/controls.ts'
import type { Binding, Write } from '../../form/schema.ts'
import type { ItemRow } from './item-list.tsx'
import { newId } from '../helper/new-id.ts'
import {
  proposalsForAll,
  testsOf,
  type ClearProposal,
  type Proposal,
  type TestInDoubt,
  type UnsureProposal,
} from './proposals.ts'
import type { PageControl } from './use-controls.ts'
import type { Suggestions } from './use-suggestions.ts'

export interface Proposals {
  open: boolean
  show: (open: boolean) => void
  all: readonly ClearProposal[]
  /** Keys of those that are taken out; what the job does not have yet is out until the person takes it in. */
  left: ReadonlySet<string>
  leave: (key: string, leave: boolean) => void
  /** Controls for which nothing is clear, with what comes near, and what the person has taken for them. */
  unsure: readonly UnsureProposal[]
  picked: ReadonlyMap<string, string>
  pick: (key: string, item: string | undefined) => void
  /** The tests of which the page may be where it does not say of which, and the person's answer. */
  tests: readonly TestInDoubt[]
  test: string
  answer: (test: string) => void
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
  const [turned, setTurned] = useState<ReadonlySet<string>>(new Set())
  const [picked, setPicked] = useState<ReadonlyMap<string, string>>(new Map())
  const [test, answer] = useState('')
  const { clear: all, unsure } = useMemo(
    () => (open ? proposalsForAll(controls, material, suggestions, test) : { clear: [], unsure: [] }),
    [open, controls, material, suggestions, test],
  )
  const left = new Set(all.filter(({ key, row }) => turned.has(key) === Boolean(row.value)).map(({ key }) => key))
  const tests = useMemo(() => testsOf(controls, material, suggestions), [controls, material, suggestions])
  const wanted: { key: string; control: Control; row: ItemRow; write: Write }[] = [
    ...all.filter(({ key }) => !left.has(key)),
    ...unsure.flatMap(({ key, control, rows }) => {
      const row: Proposal | undefined = rows.find(({ id }) => id === picked.get(key))
      return row ? [{ key, control, row, write: row.write }] : []
    }),
  ]

  return {
    open,
    show: (now) => {
      setOpen(now)
      setTurned(new Set())
      setPicked(new Map())
    },
    all,
    left,
    leave: (key, leave) => {
      if (left.has(key) === leave) return
      const next = new Set(turned)
      if (!next.delete(key)) next.add(key)
      setTurned(next)
    },
    unsure,
    picked,
    pick: (key, item) => {
      const next = new Map(picked)
      if (item === undefined) next.delete(key)
      else next.set(key, item)
      setPicked(next)
    },
    tests,
    test,
    answer,
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
