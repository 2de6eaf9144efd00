import { boxOf, type Box } from './box.ts'

/** Layout changes that fire no event (animations, late fonts) are caught by looking again this often, in ms. */
const pulse = 250

const text = (boxes: readonly (Box | undefined)[]) =>
  boxes.map((box) => (box ? [box.left, box.top, box.right, box.bottom].map(Math.round).join() : '')).join(';')

/** Says the boxes of groups of elements, now and whenever scrolling, resizing or the page's layout changes them. */
export function watchBoxes(
  groups: readonly (readonly Element[])[],
  take: (boxes: (Box | undefined)[]) => void,
): () => void {
  const watch = new AbortController()
  let frame = 0
  let last: string | undefined
  const measure = () => {
    frame = 0
    const now = groups.map(boxOf)
    const key = text(now)
    if (key === last) return
    last = key
    take(now)
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
}
