import { alive } from '../../form/page/dom.ts'
import { boxOf } from './box.ts'

/** Width below which the dock is a sheet at the foot of the page; its frame is laid out by it. */
export const sheetBelow = 700
/** Room kept for a page's own bar at the top. */
const margin = 64

/** Scrolls the page so that a control is seen beside the dock, unless it is already. */
export function bringIntoView(elements: readonly Element[]): void {
  const sheet = innerWidth <= sheetBelow
  const lowest = sheet ? innerHeight * 0.4 : innerHeight - margin
  const box = boxOf(elements)
  if (box && box.top >= margin && box.bottom <= lowest) return
  elements.find(alive)?.scrollIntoView({ block: sheet ? 'start' : 'center', behavior: 'instant' })
  const now = sheet ? boxOf(elements) : undefined
  if (now && now.top < margin) scrollBy({ top: now.top - margin, behavior: 'instant' })
}
