/** The book as a file: jobs, devices, form maps with their versions, limits, settings, attachments and entries. */
import * as z from 'zod/mini'
import { formMapSchema } from '../form/schema.ts'
import { deviceSchema, jobSchema, keptLimitSchema } from '../job/schema.ts'
import { whyNotKept } from './attachments.ts'
import { fromBase64, toBase64 } from './base64.ts'
import { check } from './check.ts'
import { database, tombstoneKinds } from './database.ts'
import { BookError, refuse } from './error.ts'
import { countEntries, entriesForwards, type Placed } from './entries.ts'
import { entrySchema } from './entry-schema.ts'
import { origins } from './origin.ts'
import { otherBookSchema } from './other-schema.ts'
import { allOthers } from './others.ts'
import { settingsSchema, type Entry } from './schema.ts'
import { soundSettings } from './settings.ts'
import type { Readable } from './lines.ts'
import { parseJson } from './parse-json.ts'
import { posted, type Posted } from './posted.ts'
import { noDamage, readSealed, readWholeRecords, sealedFile, type Damage, type Item } from './sealed.ts'
import { sha256 } from './sha256.ts'
import { say } from '../words/say.ts'

const tombstoneSchema = z.object({ kind: z.enum(tombstoneKinds), id: z.string(), at: z.string() })

/** Version 3 holds books that are kept beside; without them a file is of version 2, which earlier programs read. */
const headSchema = z.object({
  format: z.literal('gapsum-book'),
  version: z.union([z.literal(2), z.literal(3)]),
  exported: z.string(),
  /** Id of the book that it was written from. */
  book: z.optional(z.string()),
})

const blobSchema = z.object({
  sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  type: z.string(),
  /** Base 64. */
  bytes: z.string(),
})

const schemas = {
  head: headSchema,
  settings: settingsSchema,
  job: jobSchema,
  device: deviceSchema,
  map: formMapSchema,
  limit: keptLimitSchema,
  deleted: tombstoneSchema,
  blob: blobSchema,
  entry: entrySchema,
  /** A book that is kept beside, before its entries. */
  book: otherBookSchema,
  /** An entry of it; `book` is its key. */
  beside: z.object({ book: z.string(), entry: entrySchema }),
  /** What the book kept and could not read, as text. */
  damaged: z.object({ of: z.string(), value: z.string() }),
}

type Kind = keyof typeof schemas
export type BookItem = { [K in Kind]: { kind: K; value: z.infer<(typeof schemas)[K]> } }[Kind]
type ValueOf<K extends Kind> = z.infer<(typeof schemas)[K]>

export type Part = {
  jobs?: ValueOf<'job'>[]
  devices?: ValueOf<'device'>[]
  maps?: ValueOf<'map'>[]
  limits?: ValueOf<'limit'>[]
  deleted?: ValueOf<'deleted'>[]
  settings?: ValueOf<'settings'> | undefined
  damaged?: ValueOf<'damaged'>[]
  /** Id of the book that the file is written from; one's own where it is left out. */
  book?: string
  /** Books that are kept beside, whose entries are in the file too. */
  books?: ValueOf<'book'>[]
  blobs?: AsyncIterable<{ sha256: string; type: string; bytes: ArrayBuffer }>
}

/** Yields a book file piece by piece, so that a long book is never in memory as one text. */
export function fileParts(part: Part, entries: Entries = []): AsyncGenerator<string> {
  return sealedFile(items(part, entries))
}

/** `Placed` ones of a book beside need that book among `books` of the part. */
type Entries = Iterable<Entry | Placed> | AsyncIterable<Entry | Placed>

async function* items(part: Part, entries: Entries): AsyncGenerator<Item> {
  const head: ValueOf<'head'> = {
    format: 'gapsum-book',
    version: part.books?.length ? 3 : 2,
    exported: new Date().toISOString(),
    book: part.book ?? (await origins()).book,
  }
  yield { kind: 'head', value: head }
  if (part.settings) yield { kind: 'settings', value: part.settings }
  const lists = {
    job: part.jobs,
    device: part.devices,
    map: part.maps,
    limit: part.limits,
    deleted: part.deleted,
    damaged: part.damaged,
    book: part.books,
  }
  for (const [kind, values] of Object.entries(lists)) for (const value of values ?? []) yield { kind, value }
  for await (const one of entries) {
    if (!('entry' in one)) yield { kind: 'entry', value: one }
    else if (one.book) yield { kind: 'beside', value: one }
    else yield { kind: 'entry', value: one.entry }
  }
  for await (const blob of part.blobs ?? []) yield { kind: 'blob', value: { ...blob, bytes: toBase64(blob.bytes) } }
}

/** The whole book, what is deleted too. `onWritten`: how many entries are written, of how many. */
export async function* wholeBook(onWritten?: (entries: number, of: number) => void): AsyncGenerator<string> {
  const db = await database()
  const [jobs, devices, maps, limits, deleted, single] = await Promise.all([
    db.getAll('jobs'),
    db.getAll('devices'),
    db.getAll('maps'),
    db.getAll('limits'),
    db.getAll('tombstones'),
    db.get('single', 'settings'),
  ])
  const settings = single && soundSettings(single).settings
  // What is damaged goes along, where a reader cannot take it for sound.
  const damaged: ValueOf<'damaged'>[] = []
  const sift = <K extends 'job' | 'device' | 'map' | 'limit'>(of: K, all: readonly ValueOf<K>[]): ValueOf<K>[] =>
    all.filter((value) => {
      const fits = schemas[of].safeParse(value).success
      if (!fits) damaged.push({ of, value: JSON.stringify(value) })
      return fits
    })
  const part = { jobs: sift('job', jobs), devices: sift('device', devices), limits: sift('limit', limits) }
  const books = await allOthers()
  yield* fileParts(
    { ...part, maps: sift('map', maps), deleted, settings, damaged, books, blobs: allBlobs() },
    told(
      allEntries(books.map(({ key }) => key)),
      (await countEntries()) + sum(books.map(({ count }) => count)),
      onWritten,
    ),
  )
}

const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0)

/** Tells at each hundredth how many there were. */
async function* told<T>(
  all: AsyncIterable<T>,
  of: number,
  tell?: (done: number, of: number) => void,
): AsyncGenerator<T> {
  let done = 0
  tell?.(0, of)
  for await (const one of all) {
    yield one
    done++
    if (Math.floor((done * 100) / of) !== Math.floor(((done - 1) * 100) / of)) tell?.(done, of)
  }
}

/** One's own entries, then those of the books beside. */
export async function* allEntries(books: readonly string[]): AsyncGenerator<Placed> {
  for (const book of ['', ...books]) for await (const entry of entriesForwards(0, book, true)) yield { entry, book }
}

async function* allBlobs() {
  const db = await database()
  for (const key of await db.getAllKeys('blobs')) {
    const blob = await db.get('blobs', key)
    if (blob) yield blob
  }
}

/** A book file that can be read from its beginning as often as need be. */
export type BookSource = {
  /** `onRead` is told how much of the file was read, from 0 to 1. */
  items: (onRead?: (share: number) => void) => AsyncIterable<BookItem>
  /** What was passed over in the latest reading; absent: the source ends with an error where anything is wrong. */
  damage?: Damage
  /** The file for a worker to read; absent where only the page can. */
  posted?: Posted | undefined
  /** Seals of entries that fitted, which are not looked at again while they are the same. */
  known?: Set<string>
  /** Ends reading and adding when it aborts. */
  signal?: AbortSignal
}

/** A file of the first version is read as a whole, so it must not be longer. */
const longestOld = 100_000_000

/**
 * Opens a book file of any version.
 * @throws BookError when it is none.
 */
export async function openBookFile(
  file: Readable,
  { passOver = false, known = new Set() }: { passOver?: boolean; known?: Set<string> } = {},
): Promise<BookSource> {
  if (passOver) return wholeRecords(file)
  const start = (await beginning(file)).trimStart()
  if (start.startsWith('[')) {
    return { items: (onRead) => checkedItems(counted(file, onRead), known), posted: posted(file), known }
  }
  if (file.size > longestOld) {
    throw refuse(
      '',
      say`This file is too long for a book file of the first version. Choose a file that the book exported.`,
    )
  }
  return readVersion1(await new Response(file.stream()).text())
}

async function beginning(file: Readable): Promise<string> {
  const reader = file.stream().getReader()
  const { value } = await reader.read()
  await reader.cancel()
  return new TextDecoder().decode(value?.subarray(0, 64))
}

/** The same file, telling how much of it was read. */
function counted(file: Readable, onRead?: (share: number) => void): Pick<Readable, 'stream'> {
  if (!onRead) return file
  let done = 0
  const count = new TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>({
    transform(chunk, controller) {
      done += chunk.length
      onRead(Math.min(1, done / file.size))
      controller.enqueue(chunk)
    },
  })
  return { stream: () => file.stream().pipeThrough(count) }
}

/** What is whole in a file of which parts are damaged. */
function wholeRecords(file: Readable): BookSource {
  const damage = noDamage()
  const pass = (line: number) => {
    damage.count++
    if (damage.lines.length < 100) damage.lines.push(line)
  }
  return {
    damage,
    items: async function* (onRead) {
      Object.assign(damage, noDamage())
      const records = readWholeRecords(counted(file, onRead), Object.keys(schemas), damage)
      for await (const { kind, value, line } of records) {
        try {
          yield await checked(kind as Kind, value, line)
        } catch (error) {
          if (!(error instanceof BookError)) throw error
          pass(line)
        }
      }
    },
  }
}

async function checked(kind: Kind, value: unknown, line: number): Promise<BookItem> {
  const known = check<unknown>(schemas[kind], value, say`Line ${line} of the file`)
  if (kind === 'blob') await checkBlob(known as ValueOf<'blob'>, line)
  return { kind, value: known } as BookItem
}

/** `known`: seals of entries that fitted in an earlier reading, and are not looked at again while their seal is the same. */
async function* checkedItems(file: Pick<Readable, 'stream'>, known: Set<string>): AsyncGenerator<BookItem> {
  let first = true
  for await (const { kind, value, line, seal } of readSealed(file, Object.keys(schemas))) {
    if (first !== (kind === 'head')) {
      throw refuse(`line ${line}`, say`The file does not begin with what it is. Choose a file that the book exported.`)
    }
    first = false
    if (kind === 'entry' && known.has(seal)) {
      yield { kind, value: value as Entry }
      continue
    }
    const item = await checked(kind as Kind, value, line)
    yield item
    // What the schema leaves out would be left out again.
    if (kind === 'entry' && hasSameKeys(item.value, value)) known.add(seal)
  }
}

/** Whether a schema left no key out. */
function hasSameKeys(one: unknown, other: unknown): boolean {
  if (typeof one !== 'object' || one === null) return true
  const keys = Object.keys(one)
  const [mine, theirs] = [one, other] as Record<string, unknown>[]
  return keys.length === Object.keys(theirs!).length && keys.every((key) => hasSameKeys(mine![key], theirs![key]))
}

async function checkBlob({ bytes, sha256: hash }: ValueOf<'blob'>, line: number): Promise<void> {
  const read = fromBase64(bytes)
  if (!read || (await sha256(read)) !== hash)
    throw refuse(`line ${line}`, say`Line ${line} of the file: the attachment is not what its fingerprint says.`)
  const why = whyNotKept(hash.slice(0, 16), read.buffer)
  if (why !== undefined) throw refuse(`line ${line}`, say`Line ${line} of the file: ${why} Nothing was taken in.`)
}

const version1Schema = z.object({
  format: z.literal('gapsum-book'),
  version: z.literal(1),
  exported: z.string(),
  jobs: z.array(jobSchema),
  devices: z.array(deviceSchema),
  maps: z.array(formMapSchema),
  deleted: z.array(tombstoneSchema),
  entries: z.array(entrySchema),
})

function readVersion1(text: string): BookSource {
  let data: unknown
  try {
    data = parseJson(text)
  } catch {
    throw refuse('', say`This file is not JSON. Choose a file that was exported from the book, unchanged.`)
  }
  const { jobs, devices, maps, deleted, entries } = check(version1Schema, data, say`The file`)
  const all: BookItem[] = [
    ...jobs.map((value) => ({ kind: 'job' as const, value })),
    ...devices.map((value) => ({ kind: 'device' as const, value })),
    ...maps.map((value) => ({ kind: 'map' as const, value })),
    ...deleted.map((value) => ({ kind: 'deleted' as const, value })),
    ...entries.toSorted((a, b) => a.number - b.number).map((value) => ({ kind: 'entry' as const, value })),
  ]
  // oxlint-disable-next-line require-await -- the same shape as a file that is read line by line
  return {
    items: async function* () {
      yield* all
    },
  }
}
