/** The entries of the book. Nothing here changes or deletes an entry. */
import { seal, verifyChain, type Unsealed, type Verdict } from './chain.ts'
import { database, type Head } from './database.ts'
import { announce } from './notice.ts'
import { passes, rowOf, type Filter, type Row } from './rows.ts'
import type { Entry } from './schema.ts'

/** How many are read at a time: few at first, so that a list shows at once; more when a search goes on. */
const [few, many] = [100, 1000]

/**
 * Adds the entry of a fill under way and removes the fill from those under way, in one transaction. `ended`: the fill
 * went through to its end; its entry is complete when every planned binding has its line. A fill that already has its
 * entry gets no second one.
 * @returns the entry, or undefined when there is no such fill.
 */
export async function addEntry(fill: string, ended: boolean): Promise<Entry | undefined> {
  // Hashing cannot be awaited inside a transaction: seal first, then add only if nothing was written meanwhile.
  for (;;) {
    const { open, lines, newest, earlier } = await readFill(fill)
    if (!open) return entryOfFill(fill)
    const bindings = new Set(lines.map(({ binding }) => binding))
    const unsealed: Unsealed = {
      ...open.fill,
      number: (newest?.number ?? 0) + 1,
      at: new Date().toISOString(),
      lines,
      complete: ended && open.fill.planned.every(({ binding }) => bindings.has(binding)),
      engine: open.engine,
      ...(open.readings && { readings: open.readings }),
      ...(earlier !== undefined && { earlier }),
      previous: newest?.hash ?? '',
    }
    const entry: Entry = { ...unsealed, hash: await seal(unsealed) }
    if (await append(entry, open.count)) {
      announce({ what: 'entries', id: entry.number })
      return entry
    }
  }
}

async function readFill(fill: string) {
  const tx = (await database()).transaction(['fills', 'lines', 'entries'])
  const entries = tx.objectStore('entries')
  const [open, lines, newest] = await Promise.all([
    tx.objectStore('fills').get(fill),
    tx.objectStore('lines').getAll(linesOf(fill)),
    entries.openCursor(null, 'prev'),
  ])
  const key = open && IDBKeyRange.only([open.fill.job.id, open.fill.map.id])
  const earlier = key && (await entries.index('job and map').openKeyCursor(key, 'prev'))
  return { open, lines: lines.map(({ line }) => line), newest: newest?.value, earlier: earlier?.primaryKey }
}

/** Adds the entry if the book still ends with its predecessor and the fill still has `count` writes. */
async function append(entry: Entry, count: number): Promise<boolean> {
  const tx = (await database()).transaction(['entries', 'rows', 'fills', 'lines', 'single'], 'readwrite', {
    durability: 'strict',
  })
  const entries = tx.objectStore('entries')
  const [newest, open] = await Promise.all([entries.openCursor(null, 'prev'), tx.objectStore('fills').get(entry.id)])
  if (open?.count !== count || (newest?.value.hash ?? '') !== entry.previous) {
    await tx.done
    return false
  }
  await Promise.all([
    entries.add(entry),
    tx.objectStore('rows').add(rowOf(entry)),
    tx.objectStore('single').put({ number: entry.number, hash: entry.hash }, 'head'),
    tx.objectStore('fills').delete(entry.id),
    tx.objectStore('lines').delete(linesOf(entry.id)),
    tx.done,
  ])
  return true
}

/** The keys of a fill's lines. */
export function linesOf(fill: string): IDBKeyRange {
  return IDBKeyRange.bound([fill, 0], [fill, Infinity])
}

/**
 * Adds entries that were sealed before, exactly as they are; they must follow the newest entry. For a copy of the book.
 * @throws DOMException when an entry of that number is already there.
 */
export async function addSealed(sealed: Entry[]): Promise<void> {
  const tx = (await database()).transaction(['entries', 'rows', 'single'], 'readwrite', { durability: 'strict' })
  const last = sealed.at(-1)
  if (!last) return
  await Promise.all([
    ...sealed.flatMap((entry) => [tx.objectStore('entries').add(entry), tx.objectStore('rows').add(rowOf(entry))]),
    tx.objectStore('single').put({ number: last.number, hash: last.hash }, 'head'),
    tx.done,
  ])
  announce({ what: 'entries' })
}

export async function getEntry(number: number): Promise<Entry | undefined> {
  return (await database()).get('entries', number)
}

/** The entry that came of a fill. */
export async function entryOfFill(fill: string): Promise<Entry | undefined> {
  return (await database()).getFromIndex('entries', 'fill', fill)
}

export async function countEntries(): Promise<number> {
  // Numbers have no gaps, so the newest one is the count; counting would read through the whole book.
  const newest = await (await database()).transaction('entries').store.openKeyCursor(null, 'prev')
  return newest?.primaryKey ?? 0
}

/** `limit`: how many at most, 50 unless told; `before`: only entries with a smaller number. */
export type Listing = Filter & { limit?: number; before?: number }

/** Entries that pass the filter, newest first, whole. */
export async function listEntries(listing: Listing = {}): Promise<Entry[]> {
  const entries: Entry[] = []
  for (const { number } of await listRows(listing)) {
    const entry = await getEntry(number)
    if (entry) entries.push(entry)
  }
  return entries
}

/** The same as `listEntries` in the short form that a list needs. Stops reading when `signal` aborts. */
export async function listRows(listing: Listing = {}, signal?: AbortSignal): Promise<Row[]> {
  const limit = listing.limit ?? 50
  const fits = passes(listing)
  const rows: Row[] = []
  for await (const row of rowsBackwards(listing.before, signal)) {
    if (fits(row)) rows.push(row)
    if (rows.length >= limit) break
  }
  return rows
}

/** Rows from the newest to the oldest, read in batches: the whole book is never in memory. */
async function* rowsBackwards(before?: number, signal?: AbortSignal): AsyncGenerator<Row> {
  const db = await database()
  let next = before ?? Infinity
  let size = few
  while (next > 1) {
    if (signal?.aborted) return
    const top = await db.transaction('rows').store.openKeyCursor(IDBKeyRange.upperBound(next, true), 'prev')
    if (!top) return
    const bottom = Math.max(1, top.primaryKey - size + 1)
    const rows = await db.getAll('rows', IDBKeyRange.bound(bottom, top.primaryKey))
    yield* rows.toReversed()
    next = bottom
    size = many
  }
}

/** All entries that pass the filter, newest first, one after another. */
export async function* entriesShown(filter: Filter): AsyncGenerator<Entry> {
  const fits = passes(filter)
  for await (const row of rowsBackwards()) {
    const entry = fits(row) ? await getEntry(row.number) : undefined
    if (entry) yield entry
  }
}

/** All entries from the first to the newest, read in batches. */
export async function* entriesForwards(): AsyncGenerator<Entry> {
  const db = await database()
  let after = 0
  for (;;) {
    const entries = await db.getAll('entries', IDBKeyRange.lowerBound(after, true), few)
    yield* entries
    const last = entries.at(-1)
    if (!last) return
    after = last.number
  }
}

/** The newest entry as last written. */
export async function getHead(): Promise<Head | undefined> {
  return (await (await database()).get('single', 'head')) as Head | undefined
}

/** Checks the chain of the whole book. */
export async function verify(onProgress?: (checked: number) => void): Promise<Verdict> {
  return verifyChain(entriesForwards(), { head: await getHead(), onProgress })
}
