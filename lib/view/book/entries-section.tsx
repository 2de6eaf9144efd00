import { Fragment } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { countEntries, getEntry } from '../../book/entries.ts'
import { listMaps } from '../../book/maps.ts'
import { isTakenIn, origins } from '../../book/origin.ts'
import { listOthers } from '../../book/others.ts'
import { everyBook, type Filter, type Row } from '../../book/rows.ts'
import { listRows, sortedAmong, type Order } from '../../book/search.ts'
import { later } from '../calculator/later.tsx'
import { DamagedFills } from './damaged-kept.tsx'
import { EntryFilter } from './entry-filter.tsx'
import { EntryRow } from './entry-row.tsx'
import { ExportButtons } from './export-buttons.tsx'
import { Empty, Trouble } from './field.tsx'
import { keptSoon } from './kept-days.ts'
import type { Route } from './route.ts'
import { useLive } from '../parts/use-live.ts'
import { count, grouped } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

const EntryDetail = later(async () => (await import('./entry-detail.tsx')).EntryDetail)
const Timeline = later(async () => (await import('./timeline.tsx')).Timeline)

const page = 50

/** Entries of one's own book and of those beside it; what two of them have in common counts once. */
async function countEvery(): Promise<number> {
  const others = await listOthers()
  return others.reduce((sum, other) => sum + other.count - other.shared, await countEntries())
}

/** The entries, newest first, a page at a time; one opens in place. */
export function EntriesSection({ route, go }: { route: Route; go: (route: Route) => void }) {
  const [filter, setFilter] = useState<Filter>({})
  const [order, setOrder] = useState<Order>('newest')
  useEffect(() => {
    if (!route.kept) return
    setFilter({ keptTo: keptSoon() })
    setOrder('kept shortest')
  }, [route.kept])
  const [limit, setLimit] = useState(page)
  // A book that the address names, when no entry of it does, is the only one shown.
  const chosen = filter.book ?? (route.entry === undefined ? route.book : undefined) ?? everyBook
  const asked: Filter = { ...filter, book: chosen, ...(route.job && { job: route.job }) }
  const key = JSON.stringify(asked)
  useEffect(() => setLimit(page), [key, order])

  const rows = useLive(
    async (signal) => {
      const listed = await listRows({ ...asked, order, limit: limit + 1 }, signal)
      return { rows: listed.slice(0, limit), more: listed.length > limit }
    },
    ['entries'],
    `${key}${order}${limit}`,
  )
  const others = useLive(listOthers, ['entries'])
  const books = others.value ?? []
  const total = useLive(countEvery, ['entries'])
  const maps = useLive(listMaps, ['maps'])
  const from = useLive(origins, ['entries'])

  const shown = rows.value?.rows ?? []
  const open = route.entry
  const isOpen = (row: Row) => row.number === open && (row.book ?? '') === (route.book ?? '')
  const openIsListed = open !== undefined && shown.some(isOpen)
  const arrived = useRef(open)
  useEffect(() => {
    // An entry that the address named on arrival is brought into view; one that was clicked is in view already.
    if (rows.value && arrived.current !== undefined) document.querySelector('tr.op')?.scrollIntoView()
    if (rows.value) arrived.current = undefined
  }, [rows.value])
  const goTo = (row?: Row) =>
    go({
      section: 'entries',
      ...(row && { entry: row.number }),
      ...(row?.book && { book: row.book }),
      ...(route.job && { job: route.job }),
    })

  if (total.value === 0) {
    return (
      <>
        <DamagedFills />
        <Empty title={say`No entries yet`}>
          <p>
            {say`Open a form that asks for your figures, open Gapsum from the toolbar and choose to fill the page. Every fill becomes an entry here, with what was to be typed and what the page then held.`}
          </p>
        </Empty>
      </>
    )
  }
  // Once there is something to show: what is drawn before would be pushed down by it, or taken away.
  if (!rows.value || total.value === undefined)
    return (
      <>
        <Trouble text={rows.trouble || total.trouble} />
        <p class="foot" role="status">
          {say`looking through the book`}
        </p>
      </>
    )
  return (
    <>
      <div class="flt">
        <EntryFilter
          filter={{ ...filter, book: chosen }}
          onChange={setFilter}
          order={order}
          onOrder={setOrder}
          maps={maps.value ?? []}
          books={books}
        />
        <ExportButtons filter={asked} />
      </div>
      {route.job && (
        <div class="only">
          <p>
            {say`Only entries of one job. `}
            <a href="#entries">{say`Show those of every job`}</a>
          </p>
          <Timeline job={route.job} />
        </div>
      )}
      <Trouble text={rows.trouble || total.trouble} />
      <DamagedFills />
      {open !== undefined && !openIsListed && (
        <Apart key={`${route.book ?? ''} ${open}`} number={open} book={route.book} />
      )}
      {shown.length === 0 ? (
        <Empty title={say`Nothing fits`}>
          <p>{say`No entry fits what you look for. Use fewer words, or take away a filter.`}</p>
        </Empty>
      ) : (
        <div class="scroll">
          <table class="t lg">
            <thead>
              <tr>
                <th class="nohead" scope="col">
                  {say`Entry`}
                </th>
                <th class="num" scope="col">
                  {say`Date`}
                </th>
                <th class="num" scope="col">
                  {say`Time`}
                </th>
                <th scope="col">{say`Job`}</th>
                <th scope="col">{say`Form map`}</th>
                <th scope="col">{say`Outcome`}</th>
                <th scope="col">{say`Status`}</th>
                <th class="num" scope="col">
                  {say`Fingerprint`}
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((row) => (
                <Fragment key={`${row.book ?? ''} ${row.number}`}>
                  <EntryRow
                    row={row}
                    takenIn={from.value !== undefined && isTakenIn(row.number, from.value)}
                    book={books.find((one) => one.key === row.book)?.name ?? ''}
                    open={isOpen(row)}
                    onToggle={() => goTo(isOpen(row) ? undefined : row)}
                  />
                  {isOpen(row) && (
                    <tr class="bx">
                      <td class="no" />
                      <td colSpan={7}>
                        <EntryDetail number={row.number} book={row.book} />
                      </td>
                    </tr>
                  )}
                </Fragment>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <div class="foot">
        <span role="status">
          {rows.loading
            ? say`looking through the book`
            : rows.value.more
              ? say`${grouped(shown.length)} of ${count(total.value, 'entry', 'entries')} shown; more below`
              : say`${grouped(shown.length)} of ${count(total.value, 'entry', 'entries')} shown`}
        </span>
        {(order === 'by job' || order === 'oldest' || order === 'kept shortest') && (
          <span>{say`Sorted among the newest ${grouped(sortedAmong)} that fit.`}</span>
        )}
        <span>{say`An entry is never changed; a correction is a new entry that names the old one.`}</span>
      </div>
      {rows.value.more && (
        <button type="button" class="b more" onClick={() => setLimit(limit + page)}>
          {say`Show ${page} more`}
        </button>
      )}
    </>
  )
}

/** An entry that the address names but the list does not show. */
function Apart({ number, book }: { number: number; book: string | undefined }) {
  const entry = useLive(() => getEntry(number, book).then((found) => found ?? null), ['entries'], String(number))
  if (entry.value === undefined) return <Trouble text={entry.trouble} />
  return (
    <section class="apart" aria-label={say`Entry ${number}`}>
      {entry.value === null ? (
        <p>{say`The book has no entry ${number}.`}</p>
      ) : (
        <>
          <h2>{say`Entry ${number}, ${entry.value.job.name}`}</h2>
          <EntryDetail number={number} book={book} />
        </>
      )}
    </section>
  )
}
