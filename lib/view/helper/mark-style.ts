import type { Look } from '../../form/looks.ts'
import type { Box } from './box.ts'

/** Below this height, in px, the tag hangs under the control and not over its words. */
const low = 32

export const markClass = (look: Look, { top, bottom }: Box) => `mk ${look} ${bottom - top < low ? 'low' : ''}`

export const markStyle = ({ left, top, right, bottom }: Box) =>
  `left:${left}px;top:${top}px;width:${right - left}px;height:${bottom - top}px`
