import { read, type Found } from '../book/journal/told.ts'
import { say } from '../words/say.ts'
import { count, grouped } from './book/wording.ts'

/** What was lost and given back, one sentence each. */
export function foundWords({
  held,
  here,
  entries,
  jobs,
  others,
  files,
  lost,
  lostCount,
  trouble,
  anew,
}: Found): string[] {
  const said: string[] = []
  if (entries > 0)
    said.push(
      say`This book held ${count(held, 'entry', 'entries')}, ${grouped(here)} were here: the second copy gave back ${grouped(entries)}.`,
    )
  else if (lostCount > 0) said.push(say`This book held ${count(held, 'entry', 'entries')}, ${grouped(here)} are here.`)
  if (jobs === 1) said.push(say`One job was given back as it was last typed.`)
  if (jobs > 1) said.push(say`${grouped(jobs)} jobs were given back as they were last typed.`)
  if (others + files > 0)
    said.push(say`Devices, form maps, limits, settings, attachments: ${grouped(others + files)} were given back.`)
  if (lostCount > 0) {
    const more = lostCount > 8 ? ' …' : ''
    said.push(
      say`In neither copy: ${lost.slice(0, 8).join(', ') + more}. Take in your newest backup in the book’s settings: it adds what is missing.`,
    )
  }
  if (anew !== undefined)
    said.push(
      say`Entry ${anew} is not the one whose fingerprint was kept apart from the book: its entries were written anew. Check the chain in the book, and compare the book with an earlier export.`,
    )
  if (trouble)
    said.push(
      say`The second copy could not be read (${trouble}). Close the browser and start it again before you fill a form; if this stays, take in your newest backup.`,
    )
  return said
}

const onlyAnew = ({ anew, entries, jobs, others, files, lostCount, trouble }: Found): boolean =>
  anew !== undefined && entries + jobs + others + files + lostCount === 0 && !trouble

/** Tells what a comparison found, until the person has read it. */
export function GivenBack({ told }: { told: Found }) {
  return (
    <div class="reminders finding trouble" role="alert">
      <p>
        <b>{onlyAnew(told) ? say`The book was changed.` : say`The browser lost a part of the book.`}</b>{' '}
        {foundWords(told).join(' ')}
      </p>
      <button type="button" class="link" onClick={() => void read()}>
        {say`I have read this`}
      </button>
    </div>
  )
}
