import { getEntry } from '../../book/entries.ts'
import { isFill } from '../../book/rows.ts'
import type { FillEntry } from '../../book/schema.ts'
import { EntryNotes } from './entry-notes.tsx'
import { EntrySide } from './entry-side.tsx'
import { Trouble } from './field.tsx'
import { linesShown } from './lines-shown.ts'
import { NoteDetail } from './note-detail.tsx'
import { ground, OutcomeWords } from './outcome.tsx'
import { useLive } from '../parts/use-live.ts'
import { bytes } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** Every binding of an entry, and beside them what wants a look. `book`: key of the book beside that it stands in. */
export function EntryDetail({ number, book = '' }: { number: number; book?: string | undefined }) {
  const entry = useLive(() => getEntry(number, book).then((found) => found ?? null), [], `${book} ${number}`)
  if (entry.trouble) return <Trouble text={entry.trouble} />
  if (!entry.value) return <p class="q bd">{say`reading the entry`}</p>
  if (!isFill(entry.value)) return <NoteDetail note={entry.value} book={book} />
  return (
    <div class="bd">
      <EntrySide entry={entry.value} book={book} />
      <div class="body">
        <Bindings entry={entry.value} />
        <EntryNotes entry={entry.value} book={book} />
      </div>
    </div>
  )
}

/** What tells the file that went into a control from any other. */
function FileWords({ entry, binding }: { entry: FillEntry; binding: string }) {
  const file = entry.files?.find((one) => one.binding === binding)
  if (!file) return null
  return (
    <small class="q">
      {bytes(file.size)}, SHA-256 <code title={file.sha256}>{file.sha256.slice(0, 16)}</code>
    </small>
  )
}

function Bindings({ entry }: { entry: FillEntry }) {
  const lines = linesShown(entry)
  return (
    <table class="t rc">
      <caption class="vh">{say`Bindings of entry ${entry.number}`}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span class="vh">{say`Number`}</span>
          </th>
          <th scope="col">{say`Control`}</th>
          <th scope="col">{say`Binding`}</th>
          <th scope="col">{say`Intended`}</th>
          <th scope="col">{say`Read back`}</th>
          <th scope="col">{say`Outcome`}</th>
          <th scope="col">{say`Note`}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line, index) => (
          <tr key={line.binding} class={ground(line.outcome)}>
            <td class="q ix">{index + 1}</td>
            <th scope="row">
              {line.control}
              {line.section && line.section !== lines[index - 1]?.section && <small class="q">{line.section}</small>}
            </th>
            <td class="bi">
              {line.source}
              <FileWords entry={entry} binding={line.binding} />
            </td>
            <td class="m" data-head="intended">
              {line.intended}
            </td>
            <td class={line.readBack === line.intended ? 'm sm' : 'm'} data-head="read back">
              {line.readBack || <span class="q">{say`empty`}</span>}
            </td>
            <td>
              <OutcomeWords of={line.outcome} />
            </td>
            <td class="q">{line.note || (line.before && line.before !== line.readBack && say`was ${line.before}`)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
