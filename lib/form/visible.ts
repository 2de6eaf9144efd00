/** Whether a person can see and reach an element. */

import { say } from '../words/say.ts'
import { own, upward } from './dom.ts'

/** Parent across open and closed shadow roots, as what is drawn is nested. */
export function parentOf(element: Element): Element | null {
  const parent = own(element, 'assignedSlot') ?? upward(element)
  if (parent) return parent
  const root: Node = Node.prototype.getRootNode.call(element)
  return 'host' in root ? (root.host as Element) : null
}

/**
 * Why a person cannot see the element, or nothing when they can. Besides the plain ways of hiding it knows the traps set
 * for programs: zero size, full transparency, a place that no scrolling reaches, a collapsed parent.
 */
export function hiddenBecause(element: Element): string | undefined {
  const document = own(element, 'ownerDocument')
  const view = document.defaultView
  if (!view) return say`not on the page`
  if (!Element.prototype.checkVisibility.call(element, { visibilityProperty: true })) return say`not displayed`
  if (!Element.prototype.checkVisibility.call(element, { opacityProperty: true })) return say`transparent`
  const box = Element.prototype.getBoundingClientRect.call(element)
  if (box.width <= 1 || box.height <= 1) return say`no size`
  // Scrolled parents count back what they scrolled away, so that a row above the fold of its box is not a trap.
  let left = view.scrollX
  let top = view.scrollY
  for (let at = parentOf(element); at; at = parentOf(at)) {
    if (at === document.documentElement || at === document.body) continue
    left += Math.abs(own(at, 'scrollLeft'))
    top += own(at, 'scrollTop')
    if (own(at, 'clientWidth') === 0 || own(at, 'clientHeight') === 0) {
      const style = view.getComputedStyle(at)
      if (style.display !== 'inline' && style.display !== 'contents' && style.overflow !== 'visible')
        return say`in a collapsed part`
    }
  }
  const leftward = view.getComputedStyle(document.documentElement).direction !== 'rtl'
  if ((leftward && box.right + left <= 0) || box.bottom + top <= 0) return say`off the page`
  const frame = view.frameElement
  return frame ? hiddenBecause(frame) : undefined
}
