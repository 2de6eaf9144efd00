/** Finding entries: the newest that pass a filter, by the index of words. Nothing here reads the whole book at once. */
import { database } from './database.ts'
import { blockOf, blockSize, indexOlder, markMonths, marksSought, markPlaces, startOf } from './indexing.ts'
import { listOthers } from './others.ts'
import { everyBook, isFill, passes, spanOf, type Filter, type Row } from './rows.ts'
import { soundRows } from './sound-rows.ts'
import { soughtIn, type Sought } from './words.ts'

/** How many rows are read at a time: few at first, so that a list shows at once. */
const [few, many] = [64, 512]

export const orders = ['newest', 'oldest', 'due first', 'by job', 'kept shortest'] as const
export type Order = (typeof orders)[number]

/** An order other than the newest first is made among so many of the newest rows found. */
export const sortedAmong = 2000

/** `limit`: how many at most, 50 unless told; `before`: only entries with a smaller number. */
export type Listing = Filter & { limit?: number; before?: number; order?: Order }

/** The rows that pass, newest first unless another order is asked for. Stops reading when `signal` aborts. */
export async function listRows(listing: Listing = {}, signal?: AbortSignal): Promise<Row[]> {
  const limit = listing.limit ?? 50
  const order = listing.order ?? 'newest'
  const rows: Row[] = []
  if (order === 'oldest' && isPlain(listing)) {
    const [only = '', ...more] = (await booksOf(listing)).map(({ key }) => key)
    if (more.length === 0) return placed(await (await database(only)).getAll('rows', undefined, limit), only)
  }
  const found = order === 'due first' ? dueFirst(listing) : rowsFound(listing, signal)
  const enough = order === 'newest' || order === 'due first' ? limit : Math.max(limit, sortedAmong)
  for await (const row of found) {
    rows.push(row)
    if (rows.length >= enough) break
  }
  if (order === 'oldest') rows.reverse()
  if (order === 'kept shortest') rows.sort((a, b) => keptOf(a).localeCompare(keptOf(b)) || a.number - b.number)
  if (order === 'by job') rows.sort((a, b) => a.job.name.localeCompare(b.job.name) || b.number - a.number)
  return rows.slice(0, limit)
}

/** The day until which a record is to be kept; those without one come last. */
const keptOf = (row: Row): string => (isFill(row) && row.keepUntil) || '9999'

const isPlain = ({ limit: _limit, order: _order, book: _book, text, ...rest }: Listing): boolean =>
  !text?.trim() && Object.values(rest).every((value) => !value)

/** The books that are looked through. `after`: entries up to it are listed as those of one's own book. */
async function booksOf({ book = '' }: Listing): Promise<{ key: string; after: number }[]> {
  if (book !== everyBook) return [{ key: book, after: 0 }]
  const others = await listOthers()
  return [{ key: '', after: 0 }, ...others.map(({ key, shared }) => ({ key, after: shared }))]
}

/** Sound rows, with the book that they stand in. */
async function placed(rows: readonly Row[], book: string): Promise<Row[]> {
  const sound = await soundRows(rows, book)
  return book ? sound.map((row) => ({ ...row, book })) : sound
}

/** Rows with something due, the earliest first. */
async function* dueFirst(listing: Listing): AsyncGenerator<Row> {
  const fits = passes(listing)
  const all: Row[] = []
  for (const { key, after } of await booksOf(listing)) {
    const rows = await (await database(key)).getAllFromIndex('rows', 'due', undefined, sortedAmong)
    for (const row of await placed(rows, key)) if (row.number > after && fits(row)) all.push(row)
  }
  yield* all.toSorted((a, b) => dueOf(a).localeCompare(dueOf(b)))
}

const dueOf = (row: Row): string => (isFill(row) ? (row.due ?? '') : '')

/** All rows that pass, newest first; those of several books by their time. */
export async function* rowsFound(listing: Listing, signal?: AbortSignal): AsyncGenerator<Row> {
  const all = (await booksOf(listing)).map(({ key, after }) => rowsIn(key, after, listing, signal))
  const [only] = all
  if (all.length === 1 && only) {
    yield* only
    return
  }
  const heads = await Promise.all(all.map(nextOf))
  for (;;) {
    let newest = -1
    for (const [at, { row }] of heads.entries()) if (row && (newest < 0 || row.at > heads[newest]!.row!.at)) newest = at
    const head = heads[newest]
    if (!head?.row) return
    yield head.row
    heads[newest] = await nextOf(head.from)
  }
}

const nextOf = async (from: AsyncGenerator<Row>) => ({ from, row: (await from.next()).value as Row | undefined })

async function* rowsIn(book: string, after: number, listing: Listing, signal?: AbortSignal): AsyncGenerator<Row> {
  const fits = passes(listing)
  for await (const rows of candidates(book, listing, signal)) {
    if (signal?.aborted) return
    for (const row of await placed(rows, book)) {
      if (fits(row) && (row.number > after || (asksKept(listing) && !(await keptHere(row.number))))) yield row
    }
  }
}

const asksKept = ({ kept, keptTo }: Filter): boolean => Boolean(kept || keptTo)

/** Whether one's own book, which has the same entry, says until when it is to be kept. */
async function keptHere(number: number): Promise<boolean> {
  const own = await (await database()).get('rows', number)
  return own !== undefined && isFill(own) && Boolean(own.keepUntil)
}

function candidates(book: string, listing: Listing, signal?: AbortSignal): AsyncGenerator<Row[]> {
  const all = [
    ...soughtIn(listing.text ?? '').words,
    ...marksSought(listing).map((word): Sought => ({ word, whole: true })),
  ]
  // The beginning of one letter narrows nothing down; it is looked at in the rows that the others find.
  const telling = all.filter(({ word, whole }) => whole || word.length > 1)
  const words = telling.length > 0 ? telling : all
  if (words.length > 0) return byWords(book, words, listing.before, signal)
  const { keptTo, testedFrom = '', testedTo = '' } = listing
  if (keptTo) return byMonths(book, 'kept', '', keptTo.slice(0, 7), listing.before)
  if (testedFrom || testedTo)
    return byMonths(book, 'tested', testedFrom.slice(0, 7), testedTo.slice(0, 7) || '9999', listing.before)
  const { from, until } = spanOf(listing)
  if (listing.status)
    return byIndex(book, 'status', IDBKeyRange.bound([listing.status, 0], [listing.status, Infinity]), listing.before)
  if (from || until) return byIndex(book, 'at', IDBKeyRange.bound(from, until || '\uffff', false, true), listing.before)
  return backwards(book, listing.before, signal)
}

/** Rows from the newest to the oldest. */
async function* backwards(book: string, before = Infinity, signal?: AbortSignal): AsyncGenerator<Row[]> {
  const db = await database(book)
  let next = before
  let size = few
  while (next > 1) {
    if (signal?.aborted) return
    const top = await db.transaction('rows').store.openKeyCursor(IDBKeyRange.upperBound(next, true), 'prev')
    if (!top) return
    const bottom = Math.max(1, top.primaryKey - size + 1)
    yield (await db.getAll('rows', IDBKeyRange.bound(bottom, top.primaryKey))).toReversed()
    next = bottom
    size = many
  }
}

/** Rows of a range of an index, from its end. A cursor walks on in a new transaction for every batch. */
async function* byIndex(
  book: string,
  name: 'status' | 'at',
  range: IDBKeyRange,
  before = Infinity,
): AsyncGenerator<Row[]> {
  const db = await database(book)
  let upper: IDBValidKey = range.upper as IDBValidKey
  let open = range.upperOpen
  let size = few
  for (;;) {
    if (indexedDB.cmp(range.lower, upper) > 0) return
    const rows: Row[] = []
    let last: IDBValidKey = upper
    let cursor = await db
      .transaction('rows')
      .store.index(name)
      .openCursor(IDBKeyRange.bound(range.lower, upper, false, open), 'prev')
    while (cursor) {
      last = cursor.key
      if (cursor.value.number < before) rows.push(cursor.value)
      // A batch ends between two keys, so that none is read twice or left out.
      cursor = await cursor.continue()
      if (rows.length >= size && cursor && indexedDB.cmp(cursor.key, last) !== 0) break
    }
    if (rows.length > 0) yield rows
    if (!cursor) return
    upper = last
    open = true
    size = many
  }
}

async function* byWords(
  book: string,
  words: readonly Sought[],
  before = Infinity,
  signal?: AbortSignal,
): AsyncGenerator<Row[]> {
  await indexOlder(undefined, book)
  const sorted = words.toSorted((a, b) => b.word.length - a.word.length)
  const db = await database(book)
  const newest = await db.transaction('rows').store.openKeyCursor(IDBKeyRange.upperBound(before, true), 'prev')
  if (!newest) return
  let block = blockOf(newest.primaryKey)
  // The newest block alone, for what is everywhere; then ever more at a time, for what is rare.
  for (let size = 1; block >= 0; size *= 4) {
    if (signal?.aborted) return
    const bottom = Math.max(0, block - size + 1)
    const numbers: number[] = []
    const tx = db.transaction('words')
    const store = tx.store
    const placesOf = async (sought: Sought, of: number): Promise<Uint8Array> => {
      const { word, whole } = sought
      const shelves =
        whole || word.length > 1
          ? [await store.get([of, startOf(word)])]
          : await store.getAll(IDBKeyRange.bound([of, word], [of, `${word}\uffff`]))
      const places = new Uint8Array(blockSize)
      for (const shelf of shelves) if (shelf !== undefined) markPlaces(shelf, sought, places)
      return places
    }
    const blocks = Array.from({ length: block - bottom + 1 }, (_, at) => block - at)
    const found = await Promise.all(
      blocks.map(async (of) => {
        // The longest word is likely the rarest: where it is not, nothing else is read.
        let common: Uint8Array = new Uint8Array(blockSize).fill(1)
        for (const word of sorted) {
          const places = await placesOf(word, of)
          for (let place = 0; place < blockSize; place++) places[place]! &= common[place]!
          common = places
          if (!common.includes(1)) return []
        }
        const here: number[] = []
        for (let place = blockSize - 1; place >= 0; place--) if (common[place] === 1) here.push(of * blockSize + place)
        return here
      }),
    )
    for (const list of found) for (const number of list) if (number < before) numbers.push(number)
    yield* rowsOf(book, numbers)
    block = bottom - 1
  }
}

/** Rows that bear a mark of a month from one to another, the newest first. */
async function* byMonths(
  book: string,
  mark: 'kept' | 'tested',
  from: string,
  to: string,
  before = Infinity,
): AsyncGenerator<Row[]> {
  await indexOlder(undefined, book)
  const db = await database(book)
  const newest = await db.transaction('rows').store.openKeyCursor(IDBKeyRange.upperBound(before, true), 'prev')
  for (let block = newest ? blockOf(newest.primaryKey) : -1; block >= 0; block--) {
    const shelf = await db.get('words', [block, startOf(`${mark}:`)])
    if (shelf === undefined) continue
    const places = new Uint8Array(blockSize)
    markMonths(shelf, mark, from, to, places)
    const numbers: number[] = []
    for (let place = blockSize - 1; place >= 0; place--) if (places[place]) numbers.push(block * blockSize + place)
    yield* rowsOf(
      book,
      numbers.filter((number) => number < before),
    )
  }
}

async function* rowsOf(book: string, numbers: readonly number[]): AsyncGenerator<Row[]> {
  const db = await database(book)
  let size = few
  for (let at = 0; at < numbers.length;) {
    const store = db.transaction('rows').store
    const rows = await Promise.all(numbers.slice(at, at + size).map((number) => store.get(number)))
    yield rows.flatMap((row) => row ?? [])
    at += size
    size = many
  }
}

/** What is due until a day in every book, the earliest first: for the head of the book. */
export async function rowsDue(until: string, limit = 50): Promise<Row[]> {
  const all: Row[] = []
  for (const { key, after } of await booksOf({ book: everyBook })) {
    const rows = await (await database(key)).getAllFromIndex('rows', 'due', IDBKeyRange.upperBound(until), limit)
    for (const row of await placed(rows, key))
      if (isFill(row) && (row.number > after || (await saidOnlyThere(row)))) all.push(row)
  }
  return all.toSorted((a, b) => dueOf(a).localeCompare(dueOf(b))).slice(0, limit)
}

/** Whether one's own book, which has the same entry, says nothing of what became of it. */
async function saidOnlyThere({ number }: Row): Promise<boolean> {
  const own = await (await database()).get('rows', number)
  return own === undefined || (isFill(own) && (own.status === 'entered' || own.status === 'draft'))
}

/** Records that are to be kept until a day or an earlier one, in every book, the earliest first. */
export const rowsKeptTo = (day: string, limit = sortedAmong): Promise<Row[]> =>
  listRows({ keptTo: day, book: everyBook, order: 'kept shortest', limit })
