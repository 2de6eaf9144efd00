import type { ComponentChildren } from 'preact'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { kept } from '../../form/kept.ts'
import { ShellContext, type Shell } from './shell.ts'

type Place = Pick<Shell, 'host' | 'root' | 'signal' | 'close' | 'setBusy'>

interface AppProps extends Place {
  /** Counts what was shown: each is shown unfolded. */
  round: number
  /** Why the other part of the helper did not come; empty when all is well. */
  trouble: string
  children: ComponentChildren
}

declare global {
  /** Where the person moved the dock to, for the part of the helper that takes over. */
  var gapsumSide: Shell['side'] | undefined
}

/** What every part of the helper stands in. */
export function App({ host, root, signal, close, setBusy, round, trouble, children }: AppProps) {
  const [side, move] = useState(() => kept('gapsumSide') ?? 'right')
  const [folded, setFolded] = useState(false)
  const shell = useMemo(() => {
    const setSide = (now: Shell['side']) => {
      globalThis.gapsumSide = now
      move(now)
    }
    return { host, root, signal, close, setBusy, side, setSide, folded, setFolded, trouble }
  }, [host, root, signal, close, setBusy, side, folded, trouble])
  useEffect(() => setFolded(false), [round])

  return <ShellContext.Provider value={shell}>{children}</ShellContext.Provider>
}
