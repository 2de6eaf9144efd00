/** How long parts of the page may still arrive. */
const settled = 1500

let letGo: AbortController | undefined

/**
 * Does `place` now and each time the page grows or shrinks, until everything has arrived or the person scrolls, presses
 * or types: parts that are read later would push away what was brought into view.
 */
export function hold(place: () => void): void {
  letGo?.abort()
  const held = (letGo = new AbortController())
  const { signal } = held
  const end = () => held.abort()
  const observer = new ResizeObserver(place)
  observer.observe(document.body)
  signal.addEventListener('abort', () => observer.disconnect())
  for (const type of ['wheel', 'touchmove', 'pointerdown', 'keydown'])
    addEventListener(type, end, { signal, capture: true, passive: true })
  setTimeout(end, settled)
  place()
}

/**
 * Focuses a part once it is there and keeps it in view until the page has settled: in the middle, or, where the page is
 * to be seen from its top, no further down than the part needs.
 */
export function bringTo(find: () => HTMLElement | null | undefined, from: 'middle' | 'top' = 'middle'): void {
  let focused: HTMLElement | undefined
  hold(() => {
    const found = find()
    if (!found) return
    if (found !== focused) found.focus({ preventScroll: true })
    focused = found
    if (from === 'top') scrollTo(0, 0)
    found.scrollIntoView({ block: from === 'top' ? 'nearest' : 'center' })
  })
}
