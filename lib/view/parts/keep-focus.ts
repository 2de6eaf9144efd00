/** The focus stays where it was when what had it is taken away: keys and screen readers would begin the page anew. */

const takes = 'input, select, textarea, button, summary, a[href], [tabindex]'

const firstIn = (place: Element): HTMLElement | undefined =>
  [...(place.matches(takes) ? [place] : []), ...place.querySelectorAll(takes)].find(
    (one): one is HTMLElement =>
      one instanceof HTMLElement && !one.matches(':disabled, [tabindex="-1"]') && one.checkVisibility(),
  )

/** What had the focus and all that it stood in, from the inside, each with its neighbours. */
type Trail = readonly { one: Element; next: Element | null; last: Element | null }[]

function trailOf(target: Element): Trail {
  const trail = []
  for (let one: Element | null = target; one; one = one.parentElement)
    trail.push({ one, next: one.nextElementSibling, last: one.previousElementSibling })
  return trail
}

/** What is nearest to the place of something that is gone: the one after it, the one before it, or what it stood in. */
function nearest(trail: Trail): HTMLElement | undefined {
  const at = trail.findIndex(({ one }) => one.isConnected)
  const gone = trail[at - 1]
  for (const place of [gone?.next, gone?.last, ...trail.slice(at).map(({ one }) => one)]) {
    const found = place?.isConnected ? firstIn(place) : undefined
    if (found) return found
  }
  return undefined
}

/**
 * Moves the focus to what stands nearest, in this page, each time what had it is taken away. A place left by the pointer
 * is left.
 * @param here whether the person works in this document: a frame takes no focus from the page around it
 */
export function keepFocus(here: () => boolean = () => true): void {
  let trail: Trail = []
  addEventListener('focusin', ({ target }) => {
    if (target instanceof Element) trail = trailOf(target)
  })
  addEventListener(
    'pointerdown',
    ({ target }) => {
      if (!(target instanceof Node && trail[0]?.one.contains(target))) trail = []
    },
    true,
  )
  new MutationObserver(() => {
    const held = document.activeElement
    if ((held && held !== document.body) || !trail[0] || trail[0].one.isConnected || !here()) return
    nearest(trail)?.focus({ preventScroll: true })
  }).observe(document.documentElement, { subtree: true, childList: true })
}
