import { useCallback, useMemo, useRef } from 'preact/hooks'
import type { Control } from '../../form/page/controls.ts'
import { findAll } from '../../form/map/find.ts'
import type { Binding, FormMap } from '../../form/schema.ts'
import type { ToDock } from '../../messages/dock-messages.ts'
import { keyOf, standIns } from './stand-ins.ts'

/** What the helper's script says of the page. */
export type PageSeen = Omit<Extract<ToDock, { type: 'page' }>, 'type'>

export interface PageControl {
  key: string
  control: Control
  binding: Binding | undefined
  /** The binding's clues fit another control of the page equally well. */
  twin: boolean
}

export interface PageControls {
  controls: PageControl[]
  leftOut: PageSeen['leftOut']
  /** Bindings whose control is not on the page now. */
  missing: Binding[]
  /** Notes which control the person bound, so that it stays bound here even if another looks the same. */
  remember: (binding: string, key: string) => void
  /** Bindings in the order of the page; those not on it keep their place at the end. */
  inOrder: (bindings: readonly Binding[]) => Binding[]
}

/** The page's controls together with what a form map binds to them. */
export function useControls(map: FormMap, page: PageSeen): PageControls {
  const { leftOut } = page
  const found = useMemo(() => standIns(page.controls), [page.controls])
  const chosen = useRef(new Map<string, string>())

  const placed = useMemo(() => {
    const answers = findAll(map.bindings, found)
    const bindings = new Map<string, Binding>()
    const twins = new Set<string>()
    const missing: Binding[] = []
    for (const binding of map.bindings) {
      const answer = answers.get(binding.id)
      const fits = !answer || 'notFound' in answer ? [] : 'found' in answer ? [answer.found] : answer.ambiguous
      const mine = chosen.current.get(binding.id)
      const still = found.some((control) => keyOf(control) === mine) ? mine : undefined
      const key = still ?? (fits[0] && keyOf(fits[0]))
      if (key === undefined) missing.push(binding)
      else {
        bindings.set(key, binding)
        if (fits.length > 1) twins.add(key)
      }
    }
    const controls = found.map((control): PageControl => {
      const key = keyOf(control)
      return { key, control, binding: bindings.get(key), twin: twins.has(key) }
    })
    return { controls, missing }
  }, [found, map.bindings])

  const remember = useCallback((binding: string, key: string) => {
    chosen.current.set(binding, key)
  }, [])
  const inOrder = useCallback(
    (bindings: readonly Binding[]) => {
      const order = new Map(placed.controls.map(({ binding }, index) => [binding?.id, index]))
      for (const [id, key] of chosen.current) {
        const index = placed.controls.findIndex((control) => control.key === key)
        if (index !== -1) order.set(id, index)
      }
      return bindings.toSorted((a, b) => (order.get(a.id) ?? Infinity) - (order.get(b.id) ?? Infinity) || 0)
    },
    [placed],
  )

  return {
    ...placed,
    leftOut,
    remember,
    inOrder,
  }
}
