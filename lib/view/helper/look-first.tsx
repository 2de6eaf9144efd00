import type { ReceiptLine } from '../../form/schema.ts'
import { Status } from './status.tsx'

function sentence(line: ReceiptLine): string {
  switch (line.outcome) {
    case 'differs':
      return `holds “${line.readBack}” instead of “${line.intended}”. Check it on the page, then type it by hand if the page is wrong.`
    case 'not found':
      return `was not on the page. Enter “${line.intended}” by hand, or map the control again.`
    case 'refused':
      return `did not take “${line.intended}”. Enter it by hand.`
    case 'ambiguous':
      return `fits more than one control, so nothing was typed. Enter “${line.intended}” by hand, or map it again.`
    case 'entered':
      return ''
  }
}

/** The lines that need a hand, in sentences, before the table. */
export function LookFirst({ lines }: { lines: readonly ReceiptLine[] }) {
  const open = lines.filter((line) => line.outcome !== 'entered')
  if (open.length === 0) return null
  return (
    <ul class="first-look">
      {open.map((line) => (
        <li key={line.binding}>
          <Status of={line.outcome} />
          <span>
            <b>{line.section ? `${line.section}, ${line.control}` : line.control}</b> {sentence(line)}
            {line.note && <small>{line.note}</small>}
          </span>
        </li>
      ))}
    </ul>
  )
}
