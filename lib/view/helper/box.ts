import { alive } from '../../form/page/dom.ts'
import { labelsOf } from '../../form/page/labels.ts'
import { parentOf } from '../../form/page/visible.ts'

/** Where something is seen on the screen, in CSS pixels of the viewport. */
export interface Box {
  left: number
  top: number
  right: number
  bottom: number
}

/** The smallest box around both. */
function around(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  }
}

const hasArea = (box: Box) => box.right - box.left > 2 && box.bottom - box.top > 2

const isTick = (element: Element) => element.matches('input[type=radio], input[type=checkbox]')

/**
 * The element itself. A tick or radio is seen with its label, and when the page hides the native control, the label
 * or what is around it stands for it.
 */
function drawnBox(element: Element): Box | undefined {
  const labels = labelsOf(element)
  const own: Box = element.getBoundingClientRect()
  const parts = [own, ...labels.map((label): Box => label.getBoundingClientRect())].filter(hasArea)
  if (isTick(element) && parts.length > 0) return parts.reduce(around)
  return parts[0] ?? [element.parentElement?.getBoundingClientRect()].find((box) => box && hasArea(box))
}

/** Cuts off what scrolling ancestors hide. */
function clipped(element: Element, box: Box): Box | undefined {
  const { documentElement, body } = element.ownerDocument
  let { left, top, right, bottom } = box
  for (let parent = parentOf(element); parent && parent !== documentElement; parent = parentOf(parent)) {
    const { overflowX, overflowY } = getComputedStyle(parent)
    if (parent === body || (overflowX === 'visible' && overflowY === 'visible')) continue
    const edge = parent.getBoundingClientRect()
    if (overflowX !== 'visible') [left, right] = [Math.max(left, edge.left), Math.min(right, edge.right)]
    if (overflowY !== 'visible') [top, bottom] = [Math.max(top, edge.top), Math.min(bottom, edge.bottom)]
  }
  const rest = { left, top, right, bottom }
  return hasArea(rest) ? rest : undefined
}

/** From a frame's own coordinates to those of the page, without what lies outside the frame. */
function inPage(element: Element, box: Box): Box | undefined {
  let seen: Box | undefined = box
  let view = element.ownerDocument.defaultView
  while (seen && view && view !== window && view.frameElement) {
    const frame: Element = view.frameElement
    const edge = frame.getBoundingClientRect()
    const [x, y] = [edge.left + frame.clientLeft, edge.top + frame.clientTop]
    const moved: Box = {
      left: Math.max(seen.left + x, edge.left),
      top: Math.max(seen.top + y, edge.top),
      right: Math.min(seen.right + x, edge.right),
      bottom: Math.min(seen.bottom + y, edge.bottom),
    }
    seen = hasArea(moved) ? moved : undefined
    view = frame.ownerDocument.defaultView
  }
  return seen
}

/** Box of a control drawn by one or several elements (radio buttons), or undefined when nothing of it is in view. */
export function boxOf(elements: readonly Element[]): Box | undefined {
  let whole: Box | undefined
  for (const element of elements) {
    const drawn = alive(element) ? drawnBox(element) : undefined
    const rest = drawn && clipped(element, drawn)
    const box = rest && inPage(element, rest)
    if (box) whole = whole ? around(whole, box) : box
  }
  return whole
}
