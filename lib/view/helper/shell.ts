import { createContext } from 'preact'
import { useContext } from 'preact/hooks'

/** What every part of the helper needs of the place it is shown in. */
export interface Shell {
  host: HTMLElement
  root: ShadowRoot
  /** Aborted when the helper is closed or the extension has ended. */
  signal: AbortSignal
  close: () => void
  /** While a fill runs, nothing else may replace what is shown. */
  setBusy: (busy: boolean) => void
  side: 'left' | 'right'
  setSide: (side: 'left' | 'right') => void
  folded: boolean
  setFolded: (folded: boolean) => void
  /** Why the other part of the helper did not come; empty when all is well. */
  trouble: string
}

export const ShellContext = createContext<Shell | undefined>(undefined)

export function useShell(): Shell {
  const shell = useContext(ShellContext)
  if (!shell) throw new Error('useShell is called outside the helper.')
  return shell
}
