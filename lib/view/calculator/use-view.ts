import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { View } from './context.ts'
import { hold } from './hold.ts'
import { readViewState, writeViewState } from './view-state.ts'

/** Folds and scroll, put back as they were left once `ready` is true. */
export function useView(ready: boolean): View {
  const state = useRef(useMemo(() => readViewState(localStorage), []))
  const [open, setAll] = useState(state.current.open)

  const keep = useCallback((patch: Partial<typeof state.current>) => {
    state.current = { ...state.current, ...patch }
    writeViewState(localStorage, state.current)
  }, [])

  useEffect(() => {
    if (!ready) return
    const { scroll } = state.current
    // The page has its full height only once what is read later has arrived.
    hold(() => scrollTo(0, scroll))
    const leaving = new AbortController()
    let timer: ReturnType<typeof setTimeout> | undefined
    const keepScroll = () => {
      clearTimeout(timer)
      timer = setTimeout(() => keep({ scroll: Math.round(scrollY) }), 100)
    }
    addEventListener('scroll', keepScroll, { signal: leaving.signal, passive: true })
    addEventListener('pagehide', () => keep({ scroll: Math.round(scrollY) }), { signal: leaving.signal })
    return () => {
      clearTimeout(timer)
      leaving.abort()
    }
  }, [ready, keep])

  const setOpen = useCallback(
    (section: string, now: boolean) => {
      keep({ open: { ...state.current.open, [section]: now } })
      setAll(state.current.open)
    },
    [keep],
  )
  return useMemo(() => ({ isOpen: (section: string) => open[section] ?? false, setOpen }), [open, setOpen])
}
