import { useCallback, useRef, useState } from 'preact/hooks'
import type { Address, Binding, FormMap } from '../../form/schema.ts'
import { send } from '../helper/send.ts'

export type Kept = { state: 'nothing yet' | 'keeping' | 'kept' } | { state: 'not kept'; message: string }

export interface FormMapEditor {
  map: FormMap
  kept: Kept
  /** Adds or replaces bindings, then puts all of them in order. */
  bind: (bindings: readonly Binding[], inOrder: (all: readonly Binding[]) => Binding[]) => void
  remove: (binding: string) => void
  rename: (name: string) => void
  readdress: (address: Address) => void
}

/**
 * A form map while it is edited. Every change is kept at once, one after another. An existing map counts one version up
 * at the first change, not at each, so that a version stands for one sitting.
 */
export function useFormMap(first: FormMap, isNew: boolean): FormMapEditor {
  const [map, setMap] = useState(first)
  const [kept, setKept] = useState<Kept>({ state: isNew ? 'nothing yet' : 'kept' })
  const latest = useRef(first)
  const queue = useRef(Promise.resolve())
  const waiting = useRef(0)

  const change = useCallback(
    (edit: (before: FormMap) => Partial<FormMap>) => {
      const before = latest.current
      const next = {
        ...before,
        ...edit(before),
        version: isNew ? first.version : first.version + 1,
        updated: new Date().toISOString(),
      }
      latest.current = next
      setMap(next)
      setKept({ state: 'keeping' })
      waiting.current += 1
      const earlier = queue.current
      queue.current = (async () => {
        await earlier
        waiting.current -= 1
        // A newer change waits behind this one and carries everything.
        if (waiting.current > 0) return
        const sent = await send({ type: 'save-map', map: latest.current })
        setKept(sent.ok ? { state: 'kept' } : { state: 'not kept', message: sent.message })
        // The book has the last word on the number.
        const version = sent.ok ? sent.map?.version : undefined
        if (version !== undefined) setMap((shown) => ({ ...shown, version }))
      })()
    },
    [first, isNew],
  )

  return {
    map,
    kept,
    bind: (bindings, inOrder) =>
      change((before) => {
        const changed = new Map(bindings.map((binding) => [binding.id, binding]))
        const stay = before.bindings.map((binding) => {
          const newer = changed.get(binding.id)
          changed.delete(binding.id)
          return newer ?? binding
        })
        return { bindings: inOrder([...stay, ...changed.values()]) }
      }),
    remove: (id) => change((before) => ({ bindings: before.bindings.filter((binding) => binding.id !== id) })),
    rename: (name) => change(() => ({ name })),
    readdress: (address) => change(() => ({ address })),
  }
}
