/** Whether a text fits into its field as it is drawn there. */
import { say } from '../words/say.ts'
import type { Field } from './fields.ts'

/** The width of a text set at one point, in points: of the letters that forms mostly use. */
export type Measure = (text: string) => number

/** Left free at each side, as the library draws it; and a line's height as a share of the letters. */
const margin = 2
const leading = 1.35
/** Nobody reads letters smaller than this, in points. */
const smallest = 4

/** What a person is to know when the field shows less than all of a text; empty when all of it is seen. */
export function whyCut(field: Field, text: string, measure: Measure): string {
  const [first] = field.widgets
  if (field.kind !== 'text' || field.comb || text === '' || !first) return ''
  const { left, right, top, bottom } = first.box
  // A field that runs up the page is as long as it is high.
  const [long, across] = [right - left, bottom - top].toSorted((a, b) => b - a) as [number, number]
  const turned = !field.lines && bottom - top > right - left
  const width = (turned || !field.lines ? long : right - left) - 2 * margin
  const tall = turned || !field.lines ? across : bottom - top
  const size = field.size || (field.lines ? smallest : Math.min(12, tall))
  const lines = text
    .split('\n')
    .reduce((sum, line) => sum + Math.max(1, Math.ceil((measure(line) * size) / Math.max(1, width))), 0)
  if (field.lines)
    return lines * size * leading > tall + size ? say`longer than its field shows: the end is cut off` : ''
  const needed = measure(text) * (field.size || smallest)
  return needed > width ? say`longer than its field shows: the end is cut off` : ''
}
