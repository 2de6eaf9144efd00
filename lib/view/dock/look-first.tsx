import type { ReceiptLine } from '../../form/schema.ts'
import { Status } from './status.tsx'
import { tickWords } from './tick-words.ts'
import { say } from '../../words/say.ts'

function sentence(line: ReceiptLine, undo: boolean): string {
  const { outcome } = line
  const intended = tickWords(line.intended)
  const readBack = tickWords(line.readBack)
  // Without a text there was nothing to type; the line's own note says why.
  if (!intended && !undo) return say`was left as it is.`
  switch (outcome) {
    case 'differs':
      return say`holds “${readBack}” instead of “${intended}”. Look at it on the page; if the page is wrong, type it by hand.`
    case 'not found':
      return intended
        ? say`was not on the page. Enter “${intended}” by hand, or map the control again.`
        : say`was not on the page. Empty it by hand, or map the control again.`
    case 'refused':
      return intended ? say`does not hold “${intended}”. Enter it by hand.` : say`could not be emptied. Set it by hand.`
    case 'ambiguous':
      return intended
        ? say`fits more than one control, so nothing was typed. Enter “${intended}” by hand, or map it again.`
        : say`fits more than one control, so nothing was typed. Empty it by hand, or map it again.`
    case 'entered':
      return ''
  }
}

/** The lines that need a hand, in sentences, before the table. */
export function LookFirst({ lines, undo }: { lines: readonly ReceiptLine[]; undo: boolean }) {
  const open = lines.filter((line) => line.outcome !== 'entered')
  if (open.length === 0) return null
  return (
    <ul class="first-look">
      {open.map((line) => (
        <li key={line.binding}>
          <Status of={line.outcome} />
          <span>
            <b>{line.section ? `${line.section}, ${line.control}` : line.control}</b> {sentence(line, undo)}
            {line.note && <small>{line.note}</small>}
          </span>
        </li>
      ))}
    </ul>
  )
}
