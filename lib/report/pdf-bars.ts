import { barsBox, nameLines, type Bars } from '../results/plot/bars.ts'
import type { Pen, Style } from './pdf-pen.ts'

const small: Style = { size: 11, colour: 'quiet' }
const key: Style = { face: 'bold', size: 11 }

/** Draws before and after as bars; the pen's corner is that of their box. */
export function drawBars(pen: Pen, { bars, left, change, arrow }: Bars): void {
  const { thick, height, line } = barsBox
  for (const [at, { name, y, to, low, high, text }] of bars.entries()) {
    for (const [row, words] of nameLines(name).entries()) {
      const down = line * (row - (nameLines(name).length - 1) / 2)
      pen.text(words, left - 6, y + 4 + down, { ...small, align: 'right' })
    }
    const [top, bottom] = [y - thick / 2, y + thick / 2]
    pen.path(`M${left} ${top}H${to}V${bottom}H${left}Z`, { fill: at === 0 ? 'rule' : 'band' })
    if (low !== undefined && high !== undefined) {
      pen.line(low, y, high, y, 'ink', 2)
      for (const end of [low, high]) pen.line(end, y - 4, end, y + 4, 'ink', 2)
    }
    pen.text(text, (high ?? to) + 7, y + 4, key)
  }
  pen.line(left, 8, left, 72, 'ink', 1.5)
  if (Math.abs(arrow.from - arrow.to) > 8) {
    const back = arrow.from > arrow.to ? 5 : -5
    pen.line(arrow.from, 32, arrow.from, 41, 'ink', 1.3)
    pen.line(arrow.from, 41, arrow.to, 41, 'ink', 1.3)
    pen.line(arrow.to, 41, arrow.to + back, 37.5, 'ink', 1.3)
    pen.line(arrow.to, 41, arrow.to + back, 44.5, 'ink', 1.3)
  }
  pen.text(change, left, height - 6, key)
}
