import { useEffect, useRef } from 'preact/hooks'

/** A part that opens over the page closes on Escape, on a click elsewhere, and when one goes elsewhere. */
export function useDismiss() {
  const part = useRef<HTMLDetailsElement>(null)
  useEffect(() => {
    const leaving = new AbortController()
    const { signal } = leaving
    const close = () => part.current?.removeAttribute('open')
    document.addEventListener(
      'keydown',
      (event) => {
        if (event.key !== 'Escape' || !part.current?.open) return
        if (part.current.contains(document.activeElement)) part.current.querySelector('summary')?.focus()
        close()
      },
      { signal },
    )
    document.addEventListener('pointerdown', ({ target }) => part.current?.contains(target as Node) || close(), {
      signal,
    })
    addEventListener('hashchange', close, { signal })
    return () => leaving.abort()
  }, [])
  return part
}
