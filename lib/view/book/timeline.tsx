import { wholeTimeline } from '../../book/notes.ts'
import { listOthers } from '../../book/others.ts'
import { isFill, rowOf } from '../../book/rows.ts'
import type { Entry } from '../../book/schema.ts'
import { kindWords } from './note-words.ts'
import { hashOf } from './route.ts'
import { useLive } from '../parts/use-live.ts'
import { count, dayAndYear, time } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** What happened to a job, in the order of time. */
export function Timeline({ job }: { job: string }) {
  const entries = useLive(() => wholeTimeline(job), ['entries'], job)
  const others = useLive(listOthers, ['entries'])
  const nameOf = (book: string) => others.value?.find(({ key }) => key === book)?.name ?? ''
  if (!entries.value?.length) return null
  return (
    <details class="sec">
      <summary>
        <h2>{say`Timeline`}</h2>{' '}
        <span class="q">{say`${count(entries.value.length, 'entry', 'entries')}, the oldest first`}</span>
      </summary>
      <ol class="line-of-time">
        {entries.value.map(({ entry, book }) => (
          <li key={`${book} ${entry.number}`}>
            <span class="q">
              {dayAndYear(entry.at)}, {time(entry.at)}
            </span>
            <a href={hashOf({ section: 'entries', entry: entry.number, job, book })}>
              {kindWords[entry.kind]} {entry.number}
            </a>
            <span>
              {words(entry)}
              {book && <small class="q"> {nameOf(book)}</small>}
            </span>
          </li>
        ))}
      </ol>
    </details>
  )
}

function words(entry: Entry): string {
  if (isFill(entry)) return entry.map.name
  const row = rowOf(entry)
  const about = entry.of === undefined ? '' : say`of entry ${entry.of}: `
  return about + (isFill(row) ? '' : row.words)
}
