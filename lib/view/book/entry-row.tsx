import { outcomes } from '../../form/schema.ts'
import type { Row } from '../../book/rows.ts'
import { Icon } from '../icons.tsx'
import { OutcomeWords } from './outcome.tsx'
import { day, time } from './wording.ts'

interface Props {
  row: Row
  open: boolean
  onToggle: () => void
}

/** An entry in one line of the list. */
export function EntryRow({ row, open, onToggle }: Props) {
  return (
    <tr class={open ? 'op' : ''}>
      <td class="no">{row.number}</td>
      <td class="num da">{day(row.at)}</td>
      <td class="num ti q">{time(row.at)}</td>
      <th scope="row" class="who">
        <button type="button" aria-expanded={open} onClick={onToggle}>
          <Icon name="tw" class={open ? 'tw down' : 'tw'} />
          <span class="vh">Entry {row.number}, </span>
          {row.job.name}
        </button>
      </th>
      <td class="fm">
        {row.map.name}
        {row.kind === 'undo' && <small> put back</small>}
      </td>
      <td>
        <Counts row={row} />
        {row.earlier !== undefined && <small class="ear">corrects or repeats {row.earlier}</small>}
      </td>
      <td class="fp num" title={row.hash}>
        {row.hash.slice(0, 8)}
      </td>
    </tr>
  )
}

function Counts({ row }: { row: Row }) {
  const written = outcomes.reduce((sum, outcome) => sum + (row.counts[outcome] ?? 0), 0)
  const missed = row.planned - written
  return (
    <span class="oc">
      {outcomes.map((outcome) => {
        const count = row.counts[outcome]
        return count ? <OutcomeWords key={outcome} of={outcome} words={`${count} ${outcome}`} /> : null
      })}
      {missed > 0 && <OutcomeWords of="not reached" words={`${missed} not reached`} />}
    </span>
  )
}
