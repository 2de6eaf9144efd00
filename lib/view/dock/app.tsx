import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { FromDock, PlanSeen, ReceiptSeen, Side, ToDock } from '../../messages/dock-messages.ts'
import type { ReceiptLine } from '../../form/schema.ts'
import { Filling } from './filling.tsx'
import { Mapping } from './mapping.tsx'
import { PlanView } from './plan-view.tsx'
import { Receipt } from './receipt.tsx'
import { ShellContext, type Shell } from './shell.ts'
import type { PageSeen } from './use-controls.ts'
import { watchSeen } from './watch-seen.ts'

type Filled = Extract<ToDock, { type: 'filling' }> & { lines: ReceiptLine[] }
type Mapped = Extract<ToDock, { type: 'map' }>
type Screen = PlanSeen | Filled | ReceiptSeen | Mapped

interface AppProps {
  tell: (message: FromDock) => void
  /** Gives the app what takes the helper's messages. */
  listen: (take: (message: ToDock) => void) => void
}

const noPage: PageSeen = { controls: [], leftOut: [], more: false, origins: [] }

/** All that is drawn in the frame: one screen after another, as the helper's script in the page says. */
export function App({ tell, listen }: AppProps) {
  const [screen, setScreen] = useState<Screen>()
  const [page, setPage] = useState(noPage)
  const [side, move] = useState<Side>('right')
  const [sheet, setSheet] = useState(false)
  const [folded, setFolded] = useState(false)
  const [trouble, setTrouble] = useState('')
  const picks = useRef<{ onPick?: (key: string) => void; onHover?: (key: string | undefined) => void }>({})

  useLayoutEffect(() => {
    listen((message) => {
      switch (message.type) {
        case 'open': {
          const { theme } = message
          if (theme === 'system') delete document.documentElement.dataset['theme']
          else document.documentElement.dataset['theme'] = theme
          move(message.side)
          setFolded(false)
          return setTrouble('')
        }
        case 'room':
          return setSheet(message.sheet)
        case 'filling':
          return setScreen({ ...message, lines: [] })
        case 'line': {
          const { line } = message
          return setScreen((before) =>
            before?.type === 'filling'
              ? { ...before, lines: [...before.lines.filter(({ binding }) => binding !== line.binding), line] }
              : before,
          )
        }
        case 'page':
          return setPage(message)
        case 'picked':
          return picks.current.onPick?.(message.key)
        case 'hovered':
          return picks.current.onHover?.(message.key || undefined)
        case 'trouble':
          return setTrouble(message.words)
        default:
          return setScreen(message)
      }
    })
  }, [listen])

  const seen = useRef<Shell['seen']>(async () => undefined)
  useEffect(() => {
    const life = new AbortController()
    seen.current = watchSeen(document.documentElement, (now) => now || tell({ type: 'raise' }), life.signal)
    return () => life.abort()
  }, [tell])

  const setSide = useCallback((now: Side) => move(now), [])
  const shell = useMemo((): Shell => {
    const close = () => tell({ type: 'close' })
    return { tell, close, side, setSide, folded, setFolded, sheet, trouble, seen: () => seen.current() }
  }, [tell, side, setSide, folded, sheet, trouble])

  return (
    <ShellContext.Provider value={shell}>
      {screen?.type === 'plan' && <PlanView key={screen.view} plan={screen} />}
      {screen?.type === 'filling' && <Filling key={screen.view} lines={screen.lines} total={screen.total} />}
      {screen?.type === 'receipt' && <Receipt key={screen.view} receipt={screen} />}
      {screen?.type === 'map' && <Mapping key={screen.view} start={screen} page={page} picks={picks.current} />}
    </ShellContext.Provider>
  )
}
