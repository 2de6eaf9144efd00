import type { ReceiptLine } from '../../form/schema.ts'
import type { FillEntry } from '../../book/schema.ts'
import type { Shown } from './outcome.tsx'
import { say } from '../../words/say.ts'

export type LineShown = Omit<ReceiptLine, 'outcome'> & { outcome: Shown }

/** The lines of an entry, and for each planned binding that has none a line that says so. */
export function linesShown(entry: FillEntry): LineShown[] {
  const written = new Set(entry.lines.map(({ binding }) => binding))
  const missed = entry.planned
    .filter(({ binding }) => !written.has(binding))
    .map(({ binding, control, section, source, text }): LineShown => ({
      binding,
      control,
      section,
      source,
      intended: text,
      before: '',
      readBack: '',
      outcome: 'not reached',
      note: entry.damaged ? say`the fill ended before, or what it noted is damaged` : say`the fill ended before`,
    }))
  return [...entry.lines, ...missed]
}
