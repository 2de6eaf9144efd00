import { outcomes } from '../../form/schema.ts'
import { isFill, type FillRow, type NoteRow, type Row } from '../../book/rows.ts'
import { Icon } from '../parts/icons.tsx'
import { kindWords } from './note-words.ts'
import { OutcomeWords } from './outcome.tsx'
import { StatusWords } from './status-words.tsx'
import { day, dayAndYear, time } from '../parts/wording.ts'
import { say, shown } from '../../words/say.ts'

interface Props {
  row: Row
  /** Whether it came out of a file. */
  takenIn: boolean
  /** What the book beside is called that it stands in; empty: one's own. */
  book?: string
  open: boolean
  onToggle: () => void
}

/** An entry in one line of the list. */
export function EntryRow({ row, takenIn, book = '', open, onToggle }: Props) {
  return (
    <tr class={open ? 'op' : ''}>
      <td class="no">{row.number}</td>
      <td class="num da">{day(row.at)}</td>
      <td class="num ti q">{time(row.at)}</td>
      <th scope="row" class="who">
        <button type="button" aria-expanded={open} onClick={onToggle}>
          <Icon name="tw" class={open ? 'tw down' : 'tw'} />
          <span class="vh">{say`Entry ${row.number},`} </span>
          {row.job.name}
        </button>
        {takenIn && !book && <small class="q"> {say`taken in`}</small>}
        {book && <small class="q"> {book}</small>}
      </th>
      {isFill(row) ? <OfFill row={row} /> : <OfNote row={row} />}
      <td class="fp num" title={row.hash}>
        {row.hash.slice(0, 8)}
      </td>
    </tr>
  )
}

function OfFill({ row }: { row: FillRow }) {
  return (
    <>
      <td class="fm">
        {row.map.name}
        {row.kind === 'undo' && <small>{say` put back`}</small>}
      </td>
      <td>
        <Counts row={row} />
        {row.earlier !== undefined && <small class="ear">{say`corrects or repeats ${row.earlier}`}</small>}
      </td>
      <td class="sta">
        {row.status && <StatusWords of={row.status} />}
        {row.confirmation && <small>{row.confirmation}</small>}
        {row.due && <small>{say`due ${day(`${row.due}T12:00`)}`}</small>}
        {row.keepUntil && <small>{say`keep until ${dayAndYear(`${row.keepUntil}T12:00`)}`}</small>}
      </td>
    </>
  )
}

function OfNote({ row }: { row: NoteRow }) {
  return (
    <>
      <td class="fm">
        {kindWords[row.kind]}
        {row.of !== undefined && <small>{say` of entry ${row.of}`}</small>}
      </td>
      <td class="said-row" colSpan={2}>
        {row.words}
      </td>
    </>
  )
}

function Counts({ row }: { row: FillRow }) {
  const written = outcomes.reduce((sum, outcome) => sum + (row.counts[outcome] ?? 0), 0)
  const missed = row.planned - written
  return (
    <span class="oc">
      {outcomes.map((outcome) => {
        const count = row.counts[outcome]
        return count ? <OutcomeWords key={outcome} of={outcome} words={say`${count} ${shown(outcome)}`} /> : null
      })}
      {missed > 0 && <OutcomeWords of="not reached" words={say`${missed} not reached`} />}
    </span>
  )
}
