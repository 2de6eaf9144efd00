import { limitPlace, resultPlace } from '../results/plot/labels.ts'
import type { Pen, Style } from './pdf-pen.ts'
import { cross } from '../results/plot/cross.ts'
import { box, type Place, type Plot } from '../results/plot/plot.ts'

const path = (places: readonly Place[]): string =>
  places.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('')

const small: Style = { size: 11, colour: 'quiet' }
const key: Style = { face: 'bold', size: 11 }

/** Draws the plot of a test as vectors and text; the pen's corner is that of the plot's box. */
export function drawPlot(pen: Pen, plot: Plot): void {
  const { left, right, top, bottom, height } = box
  for (const { x, text } of plot.verticals) {
    pen.line(x, top, x, bottom, 'rule', 0.8)
    pen.text(text, x, bottom + 14, { ...small, align: 'middle' })
  }
  for (const { y, text } of plot.horizontals) {
    pen.line(left, y, right, y, 'rule', 0.8)
    pen.text(text, left - 6, y + 3.5, { ...small, align: 'right' })
  }
  pen.path(`${path(plot.band)}Z`, { fill: 'band' })
  pen.path(path(plot.line), { stroke: 'accent', width: 1.6 })
  if (plot.other) pen.path(path(plot.other), { stroke: 'ink', width: 1.2, dash: [5, 4] })
  const { limit, result, equation } = plot
  if (limit) {
    const [x, y] = limit.at
    const [from, to] = [Math.max(left, x - limit.half), Math.min(right, x + limit.half)]
    pen.hatch(from, y - 9, to - from, 9)
    pen.line(from, y, to, y, 'ink', 2)
  }
  for (const { at, left: gone } of plot.marks) if (!gone) pen.dot(...at, 3.4, 'paper', 'ink')
  if (result) {
    const [x, y] = result.at
    pen.line(x, result.low, x, result.high, 'ink', 2)
    for (const end of [result.low, result.high]) pen.line(x - 4, end, x + 4, end, 'ink', 2)
    pen.dot(x, y, 3.6, 'ink')
    write(pen, result.text, resultPlace(plot))
  }
  for (const { at, left: gone } of plot.marks) if (gone) pen.path(cross(...at), { stroke: 'doubt', width: 2 })
  if (limit) write(pen, limit.text, limitPlace(plot))
  pen.path(`M${left} ${top}V${bottom}H${right}`, { stroke: 'ink', width: 1.5 })

  const name = `${plot.pressureName} `
  let x = (left + right) / 2 - pen.width(name, small) / 2 - 12
  x += pen.text(name, x, height - 3, small)
  x += pen.text('Δ', x, height - 3, { ...small, face: 'symbol' })
  x += pen.text('P', x, height - 3, { ...small, face: 'italic' })
  pen.text(', Pa', x, height - 3, small)
  pen.text(plot.flowName, 12, (top + bottom) / 2, { ...small, align: 'middle', turn: 90 })

  x = left + 10
  const large = top + 18
  x += pen.text('Q', x, large, { face: 'italic', size: 15 })
  x += pen.text(` = ${equation.coefficient} `, x, large, { face: 'serif', size: 15 })
  x += pen.text('Δ', x, large, { face: 'symbol', size: 15 })
  x += pen.text('P', x, large, { face: 'italic', size: 15 })
  pen.text(equation.exponent, x + 1, large - 5, { face: 'serif', size: 10 })
  pen.text(equation.detail, left + 10, top + 33, { face: 'serif', size: 12, colour: 'quiet' })
}

function write(pen: Pen, text: string, { x, y, 'text-anchor': anchor }: ReturnType<typeof resultPlace>): void {
  pen.text(text, x, y, { ...key, align: anchor === 'end' ? 'right' : 'left' })
}
