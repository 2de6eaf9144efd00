import { read, type Found } from '../../book/journal/told.ts'
import { say } from '../../words/say.ts'
import { count, grouped } from './wording.ts'

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
  books = [],
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
  for (const book of books) said.push(bookWords(book))
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

/** What happened to a book that is kept beside. */
function bookWords({ name, held, here, given, file }: NonNullable<Found['books']>[number]): string {
  const before = count(held, 'entry', 'entries')
  if (here + given >= held)
    return say`The book ${name} held ${before}, ${grouped(here)} were here: its copy gave back ${grouped(given)}.`
  const now = here + given
  return say`The book ${name} held ${before}, ${grouped(now)} are here. Take ${file || say`its file`} in again under Settings: it adds what is missing.`
}

const onlyAnew = ({ anew, entries, jobs, others, files, lostCount, trouble, books = [] }: Found): boolean =>
  anew !== undefined && entries + jobs + others + files + lostCount + books.length === 0 && !trouble

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
