/**
 * Rows and the index of words, written together with the entries they come from.
 *
 * The index is kept in blocks of entries. Under a block and the first letters of words stand these words, each with the
 * places of the entries that hold it. So a search goes from the newest block to the oldest and stops when enough is
 * found, and taking in many entries writes few records.
 */
import { database, rowForm, type Older, type RowForm } from './database.ts'
import { entrySchema } from './entry-schema.ts'
import { sound } from './sound.ts'
import { isSound } from './sound-rows.ts'
import { followed, isFill, isToLookAt, rowOf, type Filter, type Row } from './rows.ts'
import type { Entry } from './schema.ts'
import { wordsOf, type Sought } from './words.ts'

/** Entries to a block. */
export const blockSize = 1024

export const blockOf = (number: number): number => Math.floor(number / blockSize)

/** What a row is found by besides its words; no word holds a colon. */
export function marksOf(row: Row): string[] {
  const marks = [`job:${row.job.id}`, `kind:${row.kind}`]
  if (!isFill(row)) return marks
  marks.push(`map:${row.map.id}`, ...Object.keys(row.counts).map((outcome) => `outcome:${outcome}`))
  if (isToLookAt(row)) marks.push('outcome:to look at')
  if (row.keepUntil) marks.push('kept:yes', `kept:${row.keepUntil.slice(0, 7)}`)
  for (const month of new Set((row.tested ?? []).map((day) => day.slice(0, 7)))) marks.push(`tested:${month}`)
  return marks
}

/** The marks that rows passing a filter all have. */
export function marksSought({ job, map, kind, outcome, kept }: Filter): string[] {
  return [
    ...(job ? [`job:${job}`] : []),
    ...(map ? [`map:${map}`] : []),
    ...(kind ? [`kind:${kind}`] : []),
    ...(outcome ? [`outcome:${outcome}`] : []),
    ...(kept ? ['kept:yes'] : []),
  ]
}

type WordKey = [block: number, start: string]

/** The words that begin alike, each with places in a block. */
type Shelf = Map<string, Set<number>>
const newShelf = (): Shelf => new Map()
const newPlaces = () => new Set<number>()

function of<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key)
  if (value === undefined) map.set(key, (value = make()))
  return value
}

/** What stands under one key of the table begins alike; marks stand apart from words. */
export const startOf = (word: string): string => (word.includes(':') ? `${word.slice(0, 2)}:` : word.slice(0, 2))

// A shelf is kept as one text, which is searched without being taken apart: a line break, the word, a tab, and for each
// place one character.
const shift = 0x100

function read(there: string | undefined, shelf: Shelf): void {
  for (const line of there ? there.slice(1).split('\n') : []) {
    const tab = line.indexOf('\t')
    const places = of(shelf, line.slice(0, tab), newPlaces)
    for (let at = tab + 1; at < line.length; at++) places.add(line.charCodeAt(at) - shift)
  }
}

function write(shelf: Shelf): string {
  let text = ''
  for (const [word, places] of shelf)
    text += `\n${word}\t${[...places].map((at) => String.fromCharCode(at + shift)).join('')}`
  return text
}

/** Marks with a 1 the places that a shelf gives for a word, or for all words that begin with it. */
export function markPlaces(shelf: string, { word, whole }: Sought, places: Uint8Array): void {
  const sought = `\n${word}${whole ? '\t' : ''}`
  for (let at = shelf.indexOf(sought); at >= 0; at = shelf.indexOf(sought, at + 1)) {
    const end = shelf.indexOf('\n', at + 1)
    for (let on = shelf.indexOf('\t', at) + 1; on < (end < 0 ? shelf.length : end); on++)
      places[shelf.charCodeAt(on) - shift] = 1
  }
}

/** Marks with a 1 the places that a shelf gives for marks of months, `kept:2029-03`, from one to another. */
export function markMonths(shelf: string, mark: 'kept' | 'tested', from: string, to: string, places: Uint8Array): void {
  for (const line of shelf.split('\n')) {
    const [word = '', on = ''] = line.split('\t')
    const month = word.slice(mark.length + 1)
    if (!word.startsWith(`${mark}:`) || !/^\d{4}-\d{2}$/.test(month) || month < from || month > to) continue
    for (let at = 0; at < on.length; at++) places[on.charCodeAt(at) - shift] = 1
  }
}

/** All words of a row, as the index has them. */
const wordsOfRow = (row: Row): string[] => [...wordsOf(row.text), ...marksOf(row)]

/** Those rows of a block that the index does not find by each of their words. */
export function notFound(rows: readonly Row[], shelves: readonly string[]): Row[] {
  const words: Shelf = newShelf()
  for (const shelf of shelves) read(typeof shelf === 'string' ? shelf : undefined, words)
  return rows.filter((row) => !wordsOfRow(row).every((word) => words.get(word)?.has(row.number % blockSize)))
}

/** The two tables inside a transaction of the caller's. */
interface Tables {
  rows: { get: (number: number) => Promise<Row | undefined>; put: (row: Row) => Promise<number> }
  words: {
    get: (key: WordKey) => Promise<string | undefined>
    put: (shelf: string, key: WordKey) => Promise<WordKey>
  }
}

/** Writes rows and words of entries, which stand in the order of their numbers. Awaits nothing but the tables. */
export async function index(entries: readonly Entry[], { rows, words }: Tables): Promise<void> {
  const written = new Map<number, Row>()
  for (const entry of entries) {
    written.set(entry.number, rowOf(entry))
    if (entry.kind !== 'follow-up') continue
    const about = written.get(entry.of) ?? (await rows.get(entry.of))
    // A damaged row is made again when it is read, from all that was said of its entry.
    if (about && isSound(about) && isFill(about)) written.set(entry.of, followed(about, entry))
  }
  const writes = [...written.values()].map((row): Promise<unknown> => rows.put(row))
  await Promise.all([...writes, indexWords([...written.values()], words)])
}

/** Writes the words of rows. Awaits nothing but the table. */
export async function indexWords(rows: readonly Row[], words: Tables['words']): Promise<void> {
  const blocks = new Map<number, Map<string, string>>()
  for (const row of rows) {
    const places = of(blocks, blockOf(row.number), () => new Map<string, string>())
    const place = String.fromCharCode((row.number % blockSize) + shift)
    for (const word of wordsOfRow(row)) places.set(word, (places.get(word) ?? '') + place)
  }
  const writes: Promise<unknown>[] = []
  for (const [block, places] of blocks)
    for (const [start, shelf] of shelvesOf(places))
      writes.push(words.get([block, start]).then((there) => words.put(joined(shelf, there), [block, start])))
  await Promise.all(writes)
}

/** Words with their places, as they are kept: those that begin alike in one text. */
function shelvesOf(places: ReadonlyMap<string, string>): Map<string, string> {
  const shelves = new Map<string, string>()
  for (const [word, on] of places) {
    const start = startOf(word)
    shelves.set(start, `${shelves.get(start) ?? ''}\n${word}\t${on}`)
  }
  return shelves
}

/** Two shelves as one; each place of a word once. */
function joined(shelf: string, there: string | undefined): string {
  if (!there) return shelf
  const both = newShelf()
  read(there, both)
  read(shelf, both)
  return write(both)
}

/** So many entries are taken into the index at a time. */
const batch = 256

/**
 * Makes rows and words of entries that have none, a batch at a time: one that is cut off goes on where it was. The
 * oldest come first, for a follow-up changes the row of an earlier entry.
 * @returns at once when there is nothing to do
 */
export async function indexOlder(onProgress?: (left: number) => void, book = ''): Promise<void> {
  const db = await database(book)
  for (;;) {
    const tx = db.transaction(['entries', 'rows', 'words', 'single'], 'readwrite')
    const single = tx.objectStore('single')
    const older = (await single.get('older')) as Older | undefined
    if (!older || older.to === 0) {
      await tx.done
      return
    }
    const first = (older.done ?? 0) + 1
    const last = Math.min(older.to, first + batch - 1)
    const entries = await tx.objectStore('entries').getAll(IDBKeyRange.bound(first, last))
    await index(entries, { rows: tx.objectStore('rows'), words: tx.objectStore('words') })
    await single.put(last === older.to ? { to: 0 } : { to: older.to, done: last }, 'older')
    await tx.done
    onProgress?.(older.to - last)
  }
}

/**
 * Makes rows and words again that an earlier version made otherwise, the oldest first, a batch at a time. Nobody has to
 * wait for it: what is there is found meanwhile as it was.
 * @returns at once when there is nothing to do
 */
export async function renewRows(book = ''): Promise<void> {
  await indexOlder(undefined, book)
  const db = await database(book)
  for (;;) {
    const tx = db.transaction(['entries', 'rows', 'words', 'single'], 'readwrite')
    const single = tx.objectStore('single')
    const form = (await single.get('form')) as RowForm | undefined
    const known = form?.rows === rowForm
    if (known && form.done === undefined) {
      await tx.done
      return
    }
    const first = (known ? (form.done ?? 0) : 0) + 1
    // Up to the newest of this moment: what was said of an entry since changes its row too.
    const entries = await tx.objectStore('entries').getAll(IDBKeyRange.lowerBound(first), batch)
    const sounded = entries.filter((entry) => sound(entrySchema, entry))
    await index(sounded, { rows: tx.objectStore('rows'), words: tx.objectStore('words') })
    const last = entries.at(-1)
    await single.put(last ? { rows: rowForm, done: last.number } : { rows: rowForm }, 'form')
    await tx.done
  }
}
