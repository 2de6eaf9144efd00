import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { cluesOf } from '../../form/page/clues.ts'
import type { Control } from '../../form/page/controls.ts'
import type { Material } from '../../form/material.ts'
import type { Suggestion } from '../../form/map/suggestion.ts'
import type { Suggest } from '../../messages/messages.ts'
import { send } from '../helper/send.ts'
import { keyOf } from './stand-ins.ts'
import type { PageControl } from './use-controls.ts'

export interface Suggestions {
  of: (control: Control) => readonly Suggestion[]
  /** Whether the answer for the controls as they are now is still under way. */
  waiting: boolean
  /** Why there are none. */
  problem: string
}

interface Answered {
  asked: string
  /** In the order of what was asked. */
  suggested: readonly (readonly Suggestion[])[]
  problem: string
}

/** What the page's controls may ask for, as the background says; asked again when they change. */
export function useSuggestions(controls: readonly PageControl[], material: Material): Suggestions {
  const [answered, setAnswered] = useState<Answered>({ asked: '', suggested: [], problem: '' })
  const latest = useRef('')
  const clues = useMemo(() => controls.map(({ control }) => cluesOf(control)), [controls])
  const asked = JSON.stringify(clues)

  useEffect(() => {
    if (latest.current === asked) return
    latest.current = asked
    const ask = async () => {
      const { job, items } = material
      const message: Suggest = { type: 'suggest', clues, material: { job, items } }
      const answer = await send(message)
      if (latest.current !== asked) return
      setAnswered({
        asked,
        suggested: (answer.ok && answer.suggested) || [],
        problem: answer.ok ? '' : answer.message,
      })
    }
    void ask()
  }, [asked, clues, material])

  const by = useRef(new Map<string, readonly Suggestion[]>())
  return useMemo(() => {
    const waiting = answered.asked !== asked
    // A page that draws the same controls anew asks for the same, in other elements.
    if (!waiting) by.current = new Map(controls.map(({ key }, at) => [key, answered.suggested[at] ?? []]))
    return { of: (control) => by.current.get(keyOf(control)) ?? [], waiting, problem: answered.problem }
  }, [answered, asked, controls])
}
