/** A line of a receipt as the book keeps it: what a page may hold without measure is cut, and that is said. */
import { bounds, cut } from '../../bounds.ts'
import { say } from '../../words/say.ts'
import type { ReceiptLine } from '../schema.ts'

/** @param most characters of what the control held before and holds now */
export function keptLine(line: ReceiptLine, most: number = bounds.value): ReceiptLine {
  const { before, readBack, control, section, source, note } = line
  const long = Math.max(before.length, readBack.length)
  const told = long > most ? say`the control held ${long} characters, of which the book keeps the first ${most}` : ''
  return {
    ...line,
    control: cut(control),
    section: cut(section),
    source: cut(source),
    before: cut(before, most),
    readBack: cut(readBack, most),
    note: [told, cut(note, bounds.note)].filter(Boolean).join('; '),
  }
}
