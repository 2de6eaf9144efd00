/** Whether a person can see and reach an element. */

import { say } from '../words/say.ts'

function parentOf(element: Element): Element | null {
  if (element.assignedSlot) return element.assignedSlot
  if (element.parentElement) return element.parentElement
  const root = element.getRootNode()
  return 'host' in root ? (root.host as Element) : null
}

/**
 * Why a person cannot see the element, or nothing when they can. Besides the plain ways of hiding it knows the traps set
 * for programs: zero size, full transparency, a place that no scrolling reaches, a collapsed parent.
 */
export function hiddenBecause(element: Element): string | undefined {
  const view = element.ownerDocument.defaultView
  if (!view) return say`not on the page`
  if (!element.checkVisibility({ visibilityProperty: true })) return say`not displayed`
  if (!element.checkVisibility({ opacityProperty: true })) return 'transparent'
  const box = element.getBoundingClientRect()
  if (box.width <= 1 || box.height <= 1) return say`no size`
  // Scrolled parents count back what they scrolled away, so that a row above the fold of its box is not a trap.
  let left = view.scrollX
  let top = view.scrollY
  for (let at = parentOf(element); at; at = parentOf(at)) {
    if (at === at.ownerDocument.documentElement || at === at.ownerDocument.body) continue
    left += Math.abs(at.scrollLeft)
    top += at.scrollTop
    if (at.clientWidth === 0 || at.clientHeight === 0) {
      const style = view.getComputedStyle(at)
      if (style.display !== 'inline' && style.display !== 'contents' && style.overflow !== 'visible')
        return say`in a collapsed part`
    }
  }
  const leftward = view.getComputedStyle(element.ownerDocument.documentElement).direction !== 'rtl'
  if ((leftward && box.right + left <= 0) || box.bottom + top <= 0) return say`off the page`
  const frame = view.frameElement
  return frame ? hiddenBecause(frame) : undefined
}
