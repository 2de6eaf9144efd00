/** The entries of the book. Nothing here changes or deletes an entry. */
import { bounds, cut } from '../bounds.ts'
import { keptLine } from '../form/fill/kept-line.ts'
import { seal, verifyChain, type Verdict } from './chain.ts'
import { sizeOf } from './check.ts'
import { database, type Db, type Head } from './database.ts'
import { BookError, refuse } from './error.ts'
import { entrySchema } from './entry-schema.ts'
import { announce } from './notice.ts'
import { index, indexOlder } from './indexing.ts'
import { inStep } from './journal/compare.ts'
import { journalEntries } from './journal/keep.ts'
import { copyApart, origins, withTakenIn, type Origins } from './origin.ts'
import { isFill, type Filter } from './rows.ts'
import { openFillSchema, type Entry, type FiledDocument, type FillEntry } from './schema.ts'
import { listRows, rowsFound, type Listing } from './search.ts'
import { allSound, sound } from './sound.ts'
import { receiptLineSchema } from '../form/schema.ts'
import { say } from '../words/say.ts'

/** How many are read at a time. */
const batch = 100

/**
 * Adds the entry of a fill under way and removes the fill from those under way, in one transaction. `ended`: the fill
 * went through to its end; its entry is complete when every planned binding has its line. A fill that already has its
 * entry gets no second one.
 * @returns the entry, or undefined when there is no such fill.
 */
export async function addEntry(fill: string, ended: boolean, document?: FiledDocument): Promise<FillEntry | undefined> {
  await inStep()
  const { book } = await origins()
  // Hashing cannot be awaited inside a transaction: seal first, then add only if nothing was written meanwhile.
  for (;;) {
    const { open, lines, damaged, newest, earlier } = await readFill(fill)
    if (!open) return entryOfFill(fill)
    const bindings = new Set(lines.map(({ binding }) => binding))
    const unsealed: Omit<FillEntry, 'hash'> = {
      ...open.fill,
      page: { ...open.fill.page, title: cut(open.fill.page.title) },
      number: (newest?.number ?? 0) + 1,
      at: new Date().toISOString(),
      lines,
      complete: ended && open.fill.planned.every(({ binding }) => bindings.has(binding)),
      ...(damaged > 0 && { damaged }),
      engine: open.engine,
      ...(open.readings && { readings: open.readings }),
      ...(open.basis && { basis: open.basis }),
      ...(document && { document }),
      ...(earlier !== undefined && { earlier }),
      book,
      previous: newest?.hash ?? '',
    }
    const entry = await fitting(unsealed)
    if (await append(entry, open.count)) {
      await journalEntries([entry])
      announce({ what: 'entries', id: entry.number })
      return entry
    }
  }
}

/** How much of what each control held is kept, until the entry is one that a file can be made of and taken in again. */
const steps = [bounds.value, 5000, 500, 50]

/** The sealed entry, with less of what the controls held where it would be longer than any that the book takes in. */
async function fitting(unsealed: Omit<FillEntry, 'hash'>): Promise<FillEntry> {
  for (const most of steps) {
    const shorter = { ...unsealed, lines: unsealed.lines.map((line) => keptLine(line, most)) }
    if (sizeOf(shorter) <= bounds.record) return { ...shorter, hash: await seal(shorter) }
  }
  // What was typed into the calculator is kept with the job; the entry goes without it.
  const { readings: _, ...bare } = unsealed
  const least = { ...bare, lines: bare.lines.map((line) => keptLine(line, 50)) }
  return { ...least, hash: await seal(least) }
}

async function readFill(fill: string) {
  const tx = (await database()).transaction(['fills', 'lines', 'entries'])
  const entries = tx.objectStore('entries')
  const [kept, lines, newest] = await Promise.all([
    tx.objectStore('fills').get(fill),
    tx.objectStore('lines').getAll(linesOf(fill)),
    entries.openCursor(null, 'prev'),
  ])
  const open = sound(openFillSchema, kept)
  const key = open && IDBKeyRange.only([open.fill.job.id, open.fill.map.id])
  const earlier = key && (await entries.index('job and map').openKeyCursor(key, 'prev'))
  const sounded = allSound(
    receiptLineSchema,
    lines.map(({ line }) => line),
  )
  const damaged = lines.length - sounded.length
  return { open, lines: sounded, damaged, newest: newest?.value, earlier: earlier?.primaryKey }
}

/** Adds the entry if the book still ends with its predecessor and the fill still has `count` writes. */
async function append(entry: FillEntry, count: number): Promise<boolean> {
  const tx = (await database()).transaction(['entries', 'rows', 'words', 'fills', 'lines', 'single'], 'readwrite', {
    durability: 'strict',
  })
  const entries = tx.objectStore('entries')
  const lines = tx.objectStore('lines')
  const [newest, open, kept] = await Promise.all([
    entries.openCursor(null, 'prev'),
    tx.objectStore('fills').get(entry.id),
    lines.getAll(linesOf(entry.id)),
  ])
  if (open?.count !== count || (newest?.value.hash ?? '') !== entry.previous) {
    await tx.done
    return false
  }
  await Promise.all([
    entries.add(entry),
    index([entry], { rows: tx.objectStore('rows'), words: tx.objectStore('words') }),
    tx.objectStore('single').put({ number: entry.number, hash: entry.hash }, 'head'),
    tx.objectStore('fills').delete(entry.id),
    // What is damaged is in no entry, and stays where it is.
    ...kept.flatMap(({ index: at, line }) => (sound(receiptLineSchema, line) ? lines.delete([entry.id, at]) : [])),
    tx.done,
  ])
  return true
}

/** The keys of a fill's lines. */
export function linesOf(fill: string): IDBKeyRange {
  return IDBKeyRange.bound([fill, 0], [fill, Infinity])
}

/**
 * Adds entries that were sealed before, exactly as they are; they must follow the newest entry. For a copy of the book,
 * a batch at a time. `from`: the file they come from, and when. `quiet`: the caller announces it.
 * @throws DOMException when an entry of that number is already there.
 * @throws BookError when the newest entry is another than the first of them names.
 */
export async function addSealed(
  sealed: readonly Entry[],
  from?: { file: string; at: string },
  quiet = false,
): Promise<void> {
  const [first, last] = [sealed[0], sealed.at(-1)]
  if (!first || !last) return
  await readyToAdd()
  const put = await putSealed(await database(), sealed, from)
  if ('newest' in put) throw doNotFollow(put.newest)
  await journalEntries(sealed)
  if (put.origins) await copyApart(put.origins)
  if (!quiet) announce({ what: 'entries' })
}

/** To be called before sealed entries are added: either copy of the book is whole, and its rows and words are there. */
export async function readyToAdd(): Promise<void> {
  await inStep()
  await indexOlder()
  await origins()
}

/**
 * Puts sealed entries into the database with their rows and words, in one transaction. The second copy is the caller's.
 * @returns where entries come from now; or the number of the newest entry, where that is not the one that they follow
 * @throws DOMException when an entry of that number is already there.
 */
export async function putSealed(
  db: Db,
  sealed: readonly Entry[],
  from?: { file: string; at: string },
): Promise<{ origins: Origins | undefined } | { newest: number }> {
  const [first, last] = [sealed[0], sealed.at(-1)]
  if (!first || !last) return { origins: undefined }
  const tx = db.transaction(['entries', 'rows', 'words', 'single'], 'readwrite', { durability: 'strict' })
  const entries = tx.objectStore('entries')
  const newest = (await entries.openCursor(null, 'prev'))?.value
  // Since they were looked at, a fill may have ended.
  if ((newest?.number ?? 0) < first.number && (newest?.hash ?? '') !== first.previous) {
    await tx.done
    return { newest: newest?.number ?? 0 }
  }
  const single = tx.objectStore('single')
  const before = (await single.get('origins')) as Origins | undefined
  const now = before && from && withTakenIn(before, { from: first.number, to: last.number, ...from })
  await Promise.all([
    ...(now ? [single.put(now, 'origins')] : []),
    ...sealed.map((entry) => entries.add(entry)),
    index(sealed, { rows: tx.objectStore('rows'), words: tx.objectStore('words') }),
    single.put({ number: last.number, hash: last.hash }, 'head'),
    tx.done,
  ])
  return { origins: now || undefined }
}

/** Why entries that were sealed elsewhere cannot be added any more. */
export function doNotFollow(newest: number): BookError {
  const message = say`The book got entry ${newest} meanwhile, which the entries of the file do not follow: they stay in the file, the rest was taken in. Choose the file again to see what can still be added.`
  return new BookError([{ code: 'conflict', path: 'entries', message }])
}

/** An entry byte for byte as it is kept, damaged or not: its seal is over that. */
export async function keptEntry(number: number, book = ''): Promise<Entry | undefined> {
  return (await database(book)).get('entries', number)
}

/**
 * An entry to be shown or used. `book`: key of a book that is kept beside; empty: one's own, here and below.
 * @throws BookError when it is damaged; it stays in its place of the chain.
 */
export async function getEntry(number: number, book = ''): Promise<Entry | undefined> {
  const kept = await keptEntry(number, book)
  const read = entrySchema.safeParse(kept)
  if (kept === undefined || read.success) return kept
  const path = read.error.issues[0]?.path.join('.') ?? ''
  const message = say`Entry ${number} is damaged (${path}). It is kept as it stands and not used; the others are. Verify the chain, and compare the book with an earlier export.`
  throw refuse(path, message)
}

/** The same, where a damaged one is passed over. */
export async function soundEntry(number: number, book = ''): Promise<Entry | undefined> {
  return getEntry(number, book).catch((error: unknown) => {
    if (error instanceof BookError) return undefined
    throw error
  })
}

/** The entry that came of a fill. */
export async function entryOfFill(fill: string, book = ''): Promise<FillEntry | undefined> {
  const entry = await (await database(book)).getFromIndex('entries', 'fill', fill)
  return entry && isFill(entry) ? entry : undefined
}

export async function countEntries(book = ''): Promise<number> {
  // Numbers have no gaps, so the newest one is the count; counting would read through the whole book.
  const newest = await (await database(book)).transaction('entries').store.openKeyCursor(null, 'prev')
  return newest?.primaryKey ?? 0
}

/** Entries that pass the filter, newest first, whole. */
export async function listEntries(listing: Listing = {}): Promise<Entry[]> {
  const entries: Entry[] = []
  for (const { number, book } of await listRows(listing)) {
    const entry = await soundEntry(number, book)
    if (entry) entries.push(entry)
  }
  return entries
}

/** An entry and the key of the book it stands in; empty: one's own. */
export type Placed = { entry: Entry; book: string }

/** All entries that pass the filter, newest first, one after another. */
export async function* entriesShown(filter: Filter): AsyncGenerator<Placed> {
  for await (const { number, book = '' } of rowsFound(filter)) {
    const entry = await soundEntry(number, book)
    if (entry) yield { entry, book }
  }
}

/**
 * All entries after a number up to the newest, read in batches. `ahead`: the next batch is read while one is used; what is
 * added meanwhile may be left out.
 */
export async function* entriesForwards(first = 0, book = '', ahead = false): AsyncGenerator<Entry> {
  const db = await database(book)
  const read = (after: number) => db.getAll('entries', IDBKeyRange.lowerBound(after, true), batch)
  let next: Promise<Entry[]> | undefined = read(first)
  for (;;) {
    const entries: Entry[] = await next
    const last = entries.at(-1)
    if (!last) return
    next = ahead ? read(last.number) : undefined
    // Nobody waits for it when the reader stops here.
    next?.catch(() => undefined)
    yield* entries
    next ??= read(last.number)
  }
}

/** The newest entry as last written. */
export async function getHead(book = ''): Promise<Head | undefined> {
  return (await (await database(book)).get('single', 'head')) as Head | undefined
}

/** Checks the chain of the whole book. */
export async function verify(onProgress?: (checked: number) => void): Promise<Verdict> {
  return verifyChain(entriesForwards(), { head: await getHead(), onProgress })
}
