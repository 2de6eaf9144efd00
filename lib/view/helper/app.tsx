import { useEffect, useMemo, useState } from 'preact/hooks'
import type { ToHelper } from '../../messages.ts'
import type { Material } from '../../form/material.ts'
import type { FormMap } from '../../form/schema.ts'
import { Mapping } from './mapping.tsx'
import { PlanScreen } from './plan-screen.tsx'
import { ShellContext } from './shell.ts'

/** What the person opened the helper for. */
export type Task = Extract<ToHelper, { type: 'map' | 'plan' }>

interface AppProps {
  message: Task
  host: HTMLElement
  root: ShadowRoot
  signal: AbortSignal
  close: () => void
  setBusy: (busy: boolean) => void
}

type Screen =
  | { show: 'map'; material: Material; map: FormMap | undefined }
  | { show: 'plan'; material: Material; map: FormMap }

const first = (message: Task): Screen =>
  message.type === 'plan'
    ? { show: 'plan', material: message.material, map: message.map }
    : { show: 'map', material: message.material, map: message.map }

/** Mapping, or the plan with what follows it. */
export function App({ message, host, root, signal, close, setBusy }: AppProps) {
  const [screen, setScreen] = useState(() => first(message))
  const [side, setSide] = useState<'left' | 'right'>('right')
  const [folded, setFolded] = useState(false)
  const shell = useMemo(
    () => ({ host, root, signal, close, setBusy, side, setSide, folded, setFolded }),
    [host, root, signal, close, setBusy, side, folded],
  )
  useEffect(() => setFolded(false), [screen])

  return (
    <ShellContext.Provider value={shell}>
      {screen.show === 'map' ? (
        <Mapping
          material={screen.material}
          map={screen.map}
          onPlan={(map) => setScreen({ show: 'plan', material: screen.material, map })}
        />
      ) : (
        <PlanScreen
          material={screen.material}
          map={screen.map}
          onMap={() => setScreen({ show: 'map', material: screen.material, map: screen.map })}
        />
      )}
    </ShellContext.Provider>
  )
}
