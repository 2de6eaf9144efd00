import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { FromDock, Side } from '../../messages/dock-messages.ts'

/** What every part of the dock needs of the place it is shown in. */
export interface Shell {
  /** Says something to the helper's script in the page. */
  tell: (message: FromDock) => void
  close: () => void
  side: Side
  setSide: (side: Side) => void
  folded: boolean
  setFolded: (folded: boolean) => void
  /** The page is too narrow for a panel at its side. */
  sheet: boolean
  /** Why something that was asked for did not come; empty when all is well. */
  trouble: string
  /** Whether nothing lies over the dock, as far as the browser says: it knows a moment after the first picture. */
  seen: () => Promise<boolean | undefined>
}

export const ShellContext = createContext<Shell | undefined>(undefined)

export function useShell(): Shell {
  const shell = useContext(ShellContext)
  if (!shell) throw new Error('useShell is called outside the dock.')
  return shell
}
