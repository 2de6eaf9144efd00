import { countEntries } from '../../book/entries.ts'
import { nameOfBook } from '../../book/others.ts'
import { persistence, storageUse } from '../../book/persist.ts'
import { rowsDue, rowsKeptTo } from '../../book/search.ts'
import { getSettings } from '../../book/settings.ts'
import { today } from '../../job/empty.ts'
import { dayLength, keptAhead, keptSoon } from './kept-days.ts'
import { hashOf } from './route.ts'
import { useLive } from '../parts/use-live.ts'
import { count, dayAndYear } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** So many days ahead a due date is shown; after so many days a backup is old. Common practice, no source. */
const [ahead, old] = [14, 30]

/** Space that should stay free: a few photos and some thousand entries. */
const spare = 100_000_000

/** What is due, how old the backup is, and whether space runs low; nothing when all is well. */
export function Reminders() {
  const state = useLive(async () => {
    const ending = (await rowsKeptTo(keptSoon())).flatMap((row) => ('keepUntil' in row && row.keepUntil) || [])
    const due = await rowsDue(today(new Date(Date.now() + ahead * dayLength)))
    const [book, entries, settings, use, kept] = await Promise.all([
      nameOfBook(due[0]?.book ?? ''),
      countEntries(),
      getSettings(),
      storageUse(),
      persistence(),
    ])
    return {
      due,
      book,
      ending,
      entries,
      backedUp: settings.backedUp,
      kept,
      low: use !== undefined && use.allowed - use.used < spare,
    }
  }, ['entries', 'settings'])
  if (!state.value) return null
  const { due, book, ending, entries, backedUp, kept, low } = state.value
  const passed = ending.filter((until) => until < today()).length
  const days = backedUp ? Math.floor((Date.now() - new Date(backedUp).getTime()) / dayLength) : Infinity
  const late = due.filter((row) => 'due' in row && row.due !== undefined && row.due < today())
  const first = due[0]
  const needsBackup = entries > 0 && days >= old
  if (due.length === 0 && ending.length === 0 && !needsBackup && !low) return null
  return (
    <aside class="reminders">
      {first && 'due' in first && first.due && (
        <p>
          {late.length > 0 ? <b>{say`${count(late.length, 'submission')} overdue. `}</b> : null}
          {say`Due ${dayAndYear(`${first.due}T12:00`)}:`}{' '}
          <a href={hashOf({ section: 'entries', entry: first.number, ...(first.book && { book: first.book }) })}>
            {book
              ? say`entry ${first.number} of the book ${book}, ${first.job.name}`
              : say`entry ${first.number}, ${first.job.name}`}
          </a>
          {due.length > 1 && say`, and ${due.length - 1} more within ${ahead} days`}
        </p>
      )}
      {ending.length > 0 && (
        <p>
          {passed > 0 && say`${count(passed, 'record')} had to be kept until a day that has passed. `}
          {ending.length > passed &&
            say`${count(ending.length - passed, 'record')} must be kept until a day within the next ${keptAhead} days. `}
          <a href={hashOf({ section: 'entries', kept: true })}>{say`Show them`}</a>
        </p>
      )}
      {needsBackup && (
        <p>
          {backedUp ? say`The last backup is ${days} days old.` : say`This book was never backed up.`}
          {kept === 'may be cleared' && say` The browser may clear it when the disk runs full.`}{' '}
          <a href={hashOf({ section: 'settings' })}>{say`Write a backup`}</a>
        </p>
      )}
      {low && (
        <p>
          <b>{say`Space runs low.`}</b>
          {say` Free some on this disk, or new entries cannot be kept.`}
        </p>
      )}
    </aside>
  )
}
