/** Whether a person can see and reach an element. */

import { say } from '../../words/say.ts'
import { own, upward } from './dom.ts'
import { inLook } from './look.ts'

/** Parent across open and closed shadow roots, as what is drawn is nested. */
export function parentOf(element: Element): Element | null {
  const parent = own(element, 'assignedSlot') ?? upward(element)
  if (parent) return parent
  const root: Node = Node.prototype.getRootNode.call(element)
  return 'host' in root ? (root.host as Element) : null
}

interface Scrolled {
  left: number
  top: number
  /** Something around it has no size to speak of and shows nothing of what it holds. */
  collapsed: boolean
}

const nowhere: Scrolled = { left: 0, top: 0, collapsed: false }

const scrolls = inLook(() => new WeakMap<Element, Scrolled>())
const directions = inLook(() => new Map<Document, boolean>())

function closes(at: Element): boolean {
  const { display, overflow } = getComputedStyle(at)
  return display !== 'inline' && display !== 'contents' && overflow !== 'visible'
}

/** Scrolled parents count back what they scrolled away, so that a row above the fold of its box is not a trap. */
function scrolledAround(element: Element, { documentElement, body }: Document): Scrolled {
  const known = scrolls()
  const chain: Element[] = []
  let found = nowhere
  for (let at = parentOf(element); at; at = parentOf(at)) {
    const before = known?.get(at)
    if (before) {
      found = before
      break
    }
    chain.push(at)
  }
  for (const at of chain.toReversed()) {
    if (at !== documentElement && at !== body)
      found = {
        left: found.left + Math.abs(own(at, 'scrollLeft')),
        top: found.top + own(at, 'scrollTop'),
        collapsed: found.collapsed || ((own(at, 'clientWidth') <= 1 || own(at, 'clientHeight') <= 1) && closes(at)),
      }
    known?.set(at, found)
  }
  return found
}

function leftward(document: Document): boolean {
  const known = directions()
  const before = known?.get(document)
  if (before !== undefined) return before
  const now = getComputedStyle(document.documentElement).direction !== 'rtl'
  known?.set(document, now)
  return now
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
  const { left, top, collapsed } = scrolledAround(element, document)
  if (collapsed) return say`in a collapsed part`
  if ((leftward(document) && box.right + view.scrollX + left <= 0) || box.bottom + view.scrollY + top <= 0)
    return say`off the page`
  const frame = view.frameElement
  return frame ? hiddenBecause(frame) : undefined
}
