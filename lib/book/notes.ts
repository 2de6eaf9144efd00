/** Entries about other entries: follow-ups, corrections, attachments, reviews. They are added, never changed. */
import { seal } from './chain.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { entriesShown, getEntry, type Placed } from './entries.ts'
import { BookError } from './error.ts'
import { index, indexOlder } from './indexing.ts'
import { inStep } from './journal/compare.ts'
import { journalEntries } from './journal/keep.ts'
import { announce } from './notice.ts'
import { origins } from './origin.ts'
import { everyBook, type Filter } from './rows.ts'
import {
  attachmentSchema,
  correctionSchema,
  followUpSchema,
  reviewSchema,
  type Entry,
  type Note,
  type NoteEntry,
} from './entry-schema.ts'
import { say } from '../words/say.ts'

const schemas = {
  'follow-up': followUpSchema,
  correction: correctionSchema,
  attachment: attachmentSchema,
  review: reviewSchema,
}

type WithoutId<T> = T extends unknown ? Omit<T, 'id' | 'about'> : never
/** A note as it is written; the book adds its id and the hash of the entry it is about. */
export type Written = WithoutId<Note>

/**
 * Adds a note to the chain. The entry it is about is named by number and by hash.
 * @throws BookError when the note does not fit, or the book has no such entry.
 */
export async function addNote(written: Written, engine: string): Promise<NoteEntry> {
  await inStep()
  await indexOlder()
  const about = written.of === undefined ? undefined : await entryAbout(written.of)
  const draft = { ...written, id: crypto.randomUUID(), ...(about && { about: about.hash }) }
  const note: Note = check(schemas[written.kind] as typeof followUpSchema, draft, say`The note`)
  if (note.kind === 'follow-up' && note.resubmittedAs !== undefined) await entryAbout(note.resubmittedAs)
  const { book } = await origins()
  // Hashing cannot be awaited inside a transaction: seal first, then add only if nothing was written meanwhile.
  for (;;) {
    const newest = await newestEntry()
    const unsealed = {
      ...note,
      number: (newest?.number ?? 0) + 1,
      at: new Date().toISOString(),
      engine,
      book,
      previous: newest?.hash ?? '',
    }
    const entry: NoteEntry = { ...unsealed, hash: await seal(unsealed) }
    if (await append(entry)) {
      await journalEntries([entry])
      announce({ what: 'entries', id: entry.number })
      return entry
    }
  }
}

async function newestEntry(): Promise<Entry | undefined> {
  return (await (await database()).transaction('entries').store.openCursor(null, 'prev'))?.value
}

async function append(entry: NoteEntry): Promise<boolean> {
  const tx = (await database()).transaction(['entries', 'rows', 'words', 'single'], 'readwrite', {
    durability: 'strict',
  })
  const entries = tx.objectStore('entries')
  const newest = await entries.openCursor(null, 'prev')
  if ((newest?.value.hash ?? '') !== entry.previous) {
    await tx.done
    return false
  }
  await Promise.all([
    entries.add(entry),
    index([entry], { rows: tx.objectStore('rows'), words: tx.objectStore('words') }),
    tx.objectStore('single').put({ number: entry.number, hash: entry.hash }, 'head'),
    tx.done,
  ])
  return true
}

async function entryAbout(number: number): Promise<Entry> {
  const entry = await getEntry(number)
  if (entry) return entry
  throw new BookError([
    {
      code: 'unknown',
      path: 'of',
      message: say`The book has no entry ${number}. Choose an entry of the list.`,
    },
  ])
}

/** The notes about an entry, the oldest first. */
export async function notesOf(entry: Entry, book = ''): Promise<NoteEntry[]> {
  const notes = await timeline(entry.job.id, book)
  return notes.filter((note): note is NoteEntry => 'about' in note && note.about === entry.hash)
}

/** Everything about a job in one book, the oldest first; at most the newest thousand. */
export async function timeline(job: string, book = '', most = 1000): Promise<Entry[]> {
  return (await timelineOf({ job, book }, most)).map(({ entry }) => entry)
}

/** The same in every book. */
export const wholeTimeline = (job: string, most = 1000): Promise<Placed[]> => timelineOf({ job, book: everyBook }, most)

async function timelineOf(filter: Filter, most: number): Promise<Placed[]> {
  const found: Placed[] = []
  for await (const one of entriesShown(filter)) {
    found.push(one)
    if (found.length >= most) break
  }
  return found.toReversed()
}
