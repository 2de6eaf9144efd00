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
import { openFillSchema, type Entry, type OpenFill } from '../schema.ts'
import { sha256 } from '../sha256.ts'
import { sound } from '../sound.ts'
import { copiedTables, copyName, copyPrefix, ownStorage, type CopiedTable } from './copies.ts'
import { openOf, writeEntries, writeHead } from './keep.ts'
import { fromLine, toLine } from './line.ts'
import { journal, type Journal } from './place.ts'

type Db = IDBPDatabase<BookSchema>

/** So many entries are read and written at a time. */
const batch = 256

/** More than so many get their rows and words later, in batches (`indexOlder`): the book is there at once. */
const indexedAtOnce = 64

/** The entry of a line, if both its checksum and its own seal fit. */
export async function entryIn(line: unknown): Promise<Entry | undefined> {
  const entry = fromLine(line) as Entry | undefined
  if (typeof entry !== 'object' || entry === null) return undefined
  return (await seal(entry).catch(() => '')) === entry.hash ? entry : undefined
}

/**
 * The keys of the second copy's entries, one a number: where several entries bear one number, the one that leads to the
 * newest fingerprint known.
 */
export async function chosenKeys(copy: Journal, newest: string): Promise<Map<number, string>> {
  const keys = await copy.getAllKeys('entries')
  const byNumber = new Map<number, string>()
  let twice = false
  for (const [number, hash] of keys) {
    twice ||= byNumber.has(number)
    byNumber.set(number, hash)
  }
  if (!twice) return byNumber
  // Backwards from the newest: each entry names the one before it.
  const known = new Set(keys.map(([, hash]) => hash))
  const last = keys.findLast(([, hash]) => hash === newest) ?? keys.at(-1)
  let [number, hash] = last ?? [0, '']
  while (number > 0 && known.has(hash)) {
    byNumber.set(number, hash)
    const entry = fromLine(await copy.get('entries', [number, hash])) as Entry | undefined
    if (!entry) break
    number -= 1
    hash = entry.previous
  }
  return byNumber
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
  const last = entries.at(-1)!
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
  newest: { number: number; hash: string },
  onProgress?: (given: number) => void,
): Promise<EntriesBack> {
  const copy = await journal()
  const [mine, theirs] = await Promise.all([db.getAllKeys('entries'), chosenKeys(copy, newest.hash)])
  const have = new Set(mine)
  const wanted = [...theirs].filter(([number]) => !have.has(number)).toSorted(([a], [b]) => a - b)
  const given = new Set<number>()
  for (let from = 0; from < wanted.length; from += batch) {
    const lines = await Promise.all(wanted.slice(from, from + batch).map((key) => copy.get('entries', key)))
    const entries = (await Promise.all(lines.map(entryIn))).filter((entry) => entry !== undefined)
    if (entries.length === 0) continue
    await putEntries(db, entries, wanted.length <= indexedAtOnce)
    for (const { number } of entries) given.add(number)
    onProgress?.(given.size)
  }
  const last = Math.max(mine.at(-1) ?? 0, ...[...given].slice(-1))
  const greatest = Math.max(newest.number, last, ...wanted.slice(-1).map(([number]) => number))
  const lost: number[] = []
  for (let number = 1; number <= greatest; number++) if (!have.has(number) && !given.has(number)) lost.push(number)
  await completeCopy(db, mine, copy)
  return { here: mine.length, newest: greatest, last, given: given.size, lost }
}

/** Writes what the second copy lacks: entries of an earlier version, or of a write that was cut off. */
async function completeCopy(db: Db, mine: readonly number[], copy: Journal): Promise<void> {
  const numbers = new Set((await copy.getAllKeys('entries')).map(([number]) => number))
  const missing = mine.filter((number) => !numbers.has(number))
  for (let from = 0; from < missing.length; from += batch) {
    const some = await Promise.all(missing.slice(from, from + batch).map((number) => db.get('entries', number)))
    await writeEntries(some.filter((entry) => entry !== undefined))
  }
  const last = (await db.transaction('entries').store.openCursor(null, 'prev'))?.value
  if (last) await writeHead(last)
}

/** Gives back fills under way with their lines. @returns how many fills or lines were missing */
export async function levelFills(db: Db): Promise<number> {
  const copy = await journal()
  const [keys, lines] = await Promise.all([copy.getAllKeys('open'), copy.getAll('open')])
  let given = 0
  for (const id of new Set(keys.map(([fill]) => fill))) {
    if ((await db.getKeyFromIndex('entries', 'fill', id)) !== undefined) {
      await copy.delete('open', openOf(id))
      continue
    }
    const of = keys.flatMap(([fill, at], place) => (fill === id ? [{ at, value: fromLine(lines[place]) }] : []))
    const fill = sound(openFillSchema, of.find(({ at }) => at === -1)?.value)
    if (!fill) continue
    given += await putFill(db, fill, of.filter(({ at, value }) => at >= 0 && value !== undefined) as Line[])
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
export async function levelBlobs(db: Db): Promise<number> {
  const copy = await journal()
  const [mine, theirs] = await Promise.all([db.getAllKeys('blobs'), copy.getAllKeys('blobs')])
  const [here, there] = [new Set(mine), new Set(theirs)]
  let given = 0
  for (const hash of theirs.filter((one) => !here.has(one))) {
    const blob = await copy.get('blobs', hash)
    if (!blob || (await sha256(blob.bytes)) !== hash) continue
    await db.put('blobs', { sha256: hash, ...blob })
    given++
  }
  for (const hash of mine.filter((one) => !there.has(one))) {
    const blob = await db.get('blobs', hash)
    if (blob) await copy.put('blobs', { type: blob.type, bytes: blob.bytes }, hash)
  }
  return given
}

const recordKey: Record<CopiedTable, (value: never) => IDBValidKey> = {
  jobs: ({ id }: { id: string }) => id,
  devices: ({ id }: { id: string }) => id,
  limits: ({ id }: { id: string }) => id,
  maps: ({ id, version }: { id: string; version: number }) => [id, version],
  tombstones: ({ kind, id }: { kind: string; id: string }) => [kind, id],
  single: () => 'settings',
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
    const records = table === 'single' ? [await db.get('single', 'settings')] : await db.getAll(table)
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
