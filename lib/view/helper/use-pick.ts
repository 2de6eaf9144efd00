import { useLayoutEffect } from 'preact/hooks'
import { pickIn, type Picking } from './pick-in.ts'

/** Picking controls on the page by pointer. */
export function usePick({ host, windows, keyOf, onHover, onPick }: Picking): void {
  useLayoutEffect(() => {
    const life = new AbortController()
    pickIn({ host, windows, keyOf, onHover, onPick }, life.signal)
    return () => life.abort()
  }, [host, windows, keyOf, onHover, onPick])
}
