/**
 * Gives back to the database what the second copy has and it has not. Only additions: what the database holds under a
 * key stays. Each step is a transaction of its own, so that one that is cut off goes on at the next start.
 */
import type { IDBPDatabase } from 'idb'
import type { ReceiptLine } from '../../form/schema.ts'
import { jobSchema } from '../../job/schema.ts'
import { seal } from '../chain.ts'
import { database, type BookSchema, type Older } from '../database.ts'
import { index } from '../indexing.ts'
import { announce } from '../notice.ts'
import { copyApart, origins, withTakenIn, type Origins } from '../origin.ts'
import { isFill } from '../rows.ts'
import { otherRecord, othersIn } from '../others.ts'
import { openFillSchema, type Entry, type OpenFill } from '../schema.ts'
import { sha256 } from '../sha256.ts'
import { sound } from '../sound.ts'
import { copiedTables, copyName, copyPrefix, ownStorage, type CopiedTable } from './copies.ts'
import { filedBlobs, readBlob } from './files.ts'
import { keptTail, openOf, writeEntries, writeHead } from './keep.ts'
import { fromLine, toLine } from './line.ts'
import { batch, chosen, entriesIn, entriesInDamaged, journals, type Sources } from './sources.ts'

type Db = IDBPDatabase<BookSchema>

/** More than so many get their rows and words later, in batches (`indexOlder`): the book is there at once. */
const indexedAtOnce = 64

/** Whether an entry's own seal fits. */
export async function sealed(entry: Entry): Promise<boolean> {
  return (await seal(entry).catch(() => '')) === entry.hash
}

type FromFile = { file: string; at: string }

/** Puts entries into the database that it has not, with the fills that they ended taken away. */
async function putEntries(db: Db, entries: readonly Entry[], indexed: boolean, from?: FromFile): Promise<void> {
  const tables = ['entries', 'rows', 'words', 'fills', 'lines', 'single'] as const
  const tx = db.transaction(tables, 'readwrite', { durability: 'strict' })
  const store = tx.objectStore('entries')
  const single = tx.objectStore('single')
  const newest = (await store.openCursor(null, 'prev'))?.value
  const work: Promise<unknown>[] = []
  for (const entry of entries) {
    work.push(store.put(entry))
    if (!isFill(entry)) continue
    work.push(tx.objectStore('fills').delete(entry.id))
    work.push(tx.objectStore('lines').delete(IDBKeyRange.bound([entry.id, 0], [entry.id, Infinity])))
  }
  const last = entries.reduce((one, other) => (other.number > one.number ? other : one))
  if (last.number > (newest?.number ?? 0)) work.push(single.put({ number: last.number, hash: last.hash }, 'head'))
  if (indexed) work.push(index(entries, { rows: tx.objectStore('rows'), words: tx.objectStore('words') }))
  else {
    const older = (await single.get('older')) as Older | undefined
    work.push(single.put({ to: Math.max(older?.to ?? 0, last.number) }, 'older'))
  }
  if (from) {
    const before = (await single.get('origins')) as Origins
    work.push(
      single.put(
        entries.reduce((all, { number }) => taken(all, number, from), before),
        'origins',
      ),
    )
  }
  await Promise.all([...work, tx.done])
}

const taken = (all: Origins, number: number, from: FromFile): Origins =>
  withTakenIn(all, { from: number, to: number, ...from })

/**
 * Adds sealed entries that need not follow the newest, to the database and to the copy; those that are there stay. `from`: the
 * file they come from, and when.
 */
export async function addApart(entries: readonly Entry[], from: FromFile): Promise<void> {
  const db = await database()
  const there = new Set(await db.getAllKeys('entries'))
  const missing = entries.filter(({ number }) => !there.has(number))
  if (missing.length === 0) return
  await origins()
  await putEntries(db, missing, true, from)
  await writeEntries(missing)
  await copyApart(await origins())
  announce({ what: 'entries' })
}

export interface EntriesBack {
  /** How many the database had, the greatest number known, and the greatest that is in either copy. */
  here: number
  newest: number
  last: number
  given: number
  /** Numbers up to the newest that neither copy has. */
  lost: number[]
}

/** Completes either copy of the entries from the other. `newest`: the greatest number and its hash that are known. */
export async function levelEntries(
  db: Db,
  all: Sources,
  newest: { number: number; hash: string },
): Promise<EntriesBack> {
  const mine = await db.getAllKeys('entries')
  const have = new Set(mine)
  const here = have.size
  const wanted = [...all.numbers].filter((number) => !have.has(number))
  const isWanted = (number: number) => !have.has(number)
  if (wanted.length > 0) {
    const right = all.twice ? await chosen(all, newest.hash) : undefined
    for await (const entries of entriesIn(all, isWanted))
      await take(entries.filter(({ number, hash }) => !right || right.get(number) === hash))
  }
  const greatest = Math.max(newest.number, ...[mine, wanted].map(greatestOf))
  let lost = numbersTo(greatest).filter(isWanted)
  if (lost.length > 0) {
    for await (const entries of entriesInDamaged(all)) await take(entries.filter(({ number }) => isWanted(number)))
    await take((await keptTail(newest)).filter(({ number }) => isWanted(number)))
    lost = lost.filter(isWanted)
  }
  const last = greatestOf(have)
  await completeCopy(db, have, all)
  return { here, newest: Math.max(greatest, last), last, given: have.size - here, lost }

  async function take(read: readonly Entry[]): Promise<void> {
    const fits = await Promise.all(read.map(sealed))
    const entries = read.filter(({ number }, at) => fits[at] && read.findIndex((one) => one.number === number) === at)
    if (entries.length === 0) return
    await putEntries(db, entries, wanted.length <= indexedAtOnce)
    for (const { number } of entries) have.add(number)
  }
}

function greatestOf(numbers: Iterable<number>): number {
  let greatest = 0
  for (const number of numbers) greatest = Math.max(greatest, number)
  return greatest
}

const numbersTo = (greatest: number): number[] => Array.from({ length: greatest }, (_, at) => at + 1)

/** Writes what the second copy lacks: entries of an earlier version, or of a write that was cut off or torn. */
async function completeCopy(db: Db, have: ReadonlySet<number>, all: Sources): Promise<void> {
  const missing = [...have].filter((number) => !all.numbers.has(number)).toSorted((a, b) => a - b)
  for (let from = 0; from < missing.length; from += batch) {
    const some = await Promise.all(missing.slice(from, from + batch).map((number) => db.get('entries', number)))
    await writeEntries(some.filter((entry) => entry !== undefined))
  }
  const last = (await db.transaction('entries').store.openCursor(null, 'prev'))?.value
  if (last) await writeHead(last)
}

/** Gives back fills under way with their lines. @returns how many fills or lines were missing */
export async function levelFills(db: Db, all: Sources): Promise<number> {
  let given = 0
  for (const from of journals(all)) {
    const [keys, lines] = await Promise.all([from.getAllKeys('open'), from.getAll('open')])
    for (const id of new Set(keys.map(([fill]) => fill))) {
      if ((await db.getKeyFromIndex('entries', 'fill', id)) !== undefined) {
        await from.delete('open', openOf(id))
        continue
      }
      const of = keys.flatMap(([fill, at], place) => (fill === id ? [{ at, line: lines[place]! }] : []))
      // The journal of an earlier run is put away, and fills under way are in no file.
      if (from !== all.now) for (const { at, line } of of) await all.now.put('open', line, [id, at])
      const read = of.map(({ at, line }) => ({ at, value: fromLine(line) }))
      const fill = sound(openFillSchema, read.find(({ at }) => at === -1)?.value)
      if (!fill) continue
      given += await putFill(db, fill, read.filter(({ at, value }) => at >= 0 && value !== undefined) as Line[])
    }
  }
  return given
}

type Line = { at: number; value: ReceiptLine }

async function putFill(db: Db, fill: OpenFill, lines: readonly Line[]): Promise<number> {
  const tx = db.transaction(['fills', 'lines', 'entries'], 'readwrite', { durability: 'strict' })
  const [ended, open] = await Promise.all([
    tx.objectStore('entries').index('fill').getKey(fill.id),
    tx.objectStore('fills').get(fill.id),
  ])
  let given = 0
  if (ended === undefined) {
    for (const { at, value } of lines) {
      if ((await tx.objectStore('lines').getKey([fill.id, at])) !== undefined) continue
      await tx.objectStore('lines').put({ fill: fill.id, index: at, line: value })
      given++
    }
    if (!open || given > 0) await tx.objectStore('fills').put({ ...(open ?? fill), count: (open?.count ?? 0) + given })
    if (!open) given++
  }
  await tx.done
  return given
}

/** Completes either copy of the attachments from the other. @returns how many the database lacked */
export async function levelBlobs(db: Db, all: Sources): Promise<number> {
  const here = new Set(await db.getAllKeys('blobs'))
  const there = new Set<string>()
  let given = 0
  async function take(hash: string, type: string, read: () => Promise<ArrayBuffer | undefined>): Promise<void> {
    there.add(hash)
    if (here.has(hash)) return
    const bytes = await read()
    if (!bytes || (await sha256(bytes)) !== hash) return
    await db.put('blobs', { sha256: hash, type, bytes })
    here.add(hash)
    given++
  }
  const { dir } = all
  for (const blob of dir ? await filedBlobs(dir) : []) await take(blob.hash, blob.type, () => readBlob(dir!, blob))
  for (const from of journals(all))
    for (const hash of await from.getAllKeys('blobs')) {
      const blob = here.has(hash) ? undefined : await from.get('blobs', hash)
      await take(hash, blob?.type ?? '', async () => blob?.bytes)
    }
  for (const hash of [...here].filter((one) => !there.has(one))) {
    const blob = await db.get('blobs', hash)
    if (blob) await all.now.put('blobs', { type: blob.type, bytes: blob.bytes }, hash)
  }
  return given
}

const recordKey: Record<CopiedTable, (value: never) => IDBValidKey> = {
  jobs: ({ id }: { id: string }) => id,
  devices: ({ id }: { id: string }) => id,
  limits: ({ id }: { id: string }) => id,
  maps: ({ id, version }: { id: string; version: number }) => [id, version],
  tombstones: ({ kind, id }: { kind: string; id: string }) => [kind, id],
  single: ({ key }: { key?: string }) => (key === undefined ? 'settings' : otherRecord(key)),
}

/** The single records that are copied: the settings, and what is known of the books beside. */
async function typedOver(db: Db): Promise<object[]> {
  const settings = await db.get('single', 'settings')
  return [...(settings ? [settings] : []), ...(await othersIn(db))]
}

/**
 * Completes either copy of jobs, devices, limits, form maps, settings and what was deleted. A job is also given back
 * where the copy was typed later. @returns how many jobs, and how many other records, the database lacked
 */
export async function levelCopies(db: Db): Promise<{ jobs: number; others: number }> {
  const storage = ownStorage()
  if (!storage) return { jobs: 0, others: 0 }
  const all = await storage.get(null)
  const counts = { jobs: 0, others: 0 }
  for (const [name, line] of Object.entries(all)) {
    const [, table, key] = /^copy (\w+) (.*)$/s.exec(name) ?? []
    const value = table === undefined ? undefined : fromLine(line)
    if (!copiedTables.includes(table as CopiedTable) || typeof value !== 'object' || value === null) continue
    const given = await putCopy(db, table as CopiedTable, JSON.parse(key!) as IDBValidKey, value)
    if (given) counts[table === 'jobs' ? 'jobs' : 'others']++
  }
  const missing: Record<string, string> = {}
  for (const table of copiedTables) {
    const records = table === 'single' ? await typedOver(db) : await db.getAll(table)
    for (const record of records) {
      const name = record && copyName(table, recordKey[table](record as never))
      if (name && (table === 'jobs' ? toLine(record) !== all[name] : !(name in all))) missing[name] = toLine(record)
    }
  }
  if (Object.keys(missing).length > 0) await storage.set(missing)
  return counts
}

async function putCopy(db: Db, table: CopiedTable, key: IDBValidKey, value: object): Promise<boolean> {
  const tx = db.transaction(table, 'readwrite', { durability: 'strict' })
  const store = tx.store as unknown as {
    get: (key: IDBValidKey) => Promise<object | undefined>
    put: (value: object, key?: IDBValidKey) => Promise<unknown>
  }
  const there = await store.get(key)
  const given = !there || (table === 'jobs' && isLater(value, there))
  if (given) await (table === 'single' ? store.put(value, key) : store.put(value))
  await tx.done
  return given
}

/** Whether the copy of a job is sound and was typed after what the database has. */
function isLater(copied: object, there: object): boolean {
  const [one, other] = [sound(jobSchema, copied), sound(jobSchema, there)]
  return one !== undefined && (other === undefined || one.updated > other.updated)
}

export const isCopyName = (name: string): boolean => name.startsWith(copyPrefix)
