import { useEffect, useState } from 'preact/hooks'
import { boxOf, type Box } from './box.ts'

/** Layout changes that fire no event (animations, late fonts) are caught by looking again this often, in ms. */
const pulse = 250

const text = (boxes: readonly (Box | undefined)[]) =>
  boxes.map((box) => (box ? [box.left, box.top, box.right, box.bottom].map(Math.round).join() : '')).join(';')

/** The boxes of groups of elements, kept up to date while the page scrolls, resizes or changes its layout. */
export function useBoxes(groups: readonly (readonly Element[])[]): (Box | undefined)[] {
  const [boxes, setBoxes] = useState<(Box | undefined)[]>([])

  useEffect(() => {
    const watch = new AbortController()
    let frame = 0
    let last = ''
    const measure = () => {
      frame = 0
      const now = groups.map(boxOf)
      const key = text(now)
      if (key === last) return
      last = key
      setBoxes(now)
    }
    const soon = () => {
      frame ||= requestAnimationFrame(measure)
    }
    measure()
    const options = { capture: true, passive: true, signal: watch.signal }
    for (const type of ['scroll', 'resize', 'transitionend', 'animationend', 'toggle']) {
      window.addEventListener(type, soon, options)
    }
    const timer = setInterval(soon, pulse)
    return () => {
      watch.abort()
      clearInterval(timer)
      cancelAnimationFrame(frame)
    }
  }, [groups])

  return boxes
}
