/**
 * Where the second copy of entries is kept: databases that share no file with the book's own. Chromium keeps all
 * databases of an origin in one log, but those of a storage bucket in another; Firefox has no buckets and keeps each
 * database in a file of its own.
 *
 * Each run of the browser writes one of its own. After a kill the browser would go on with a log that may be torn at its
 * end, and delete all of it at a later start: a log that nobody adds to any more can be read once more, torn or not.
 */
import type { DBSchema, IDBPDatabase } from 'idb'
import { wrap } from 'idb'
import { runId } from './run.ts'

export interface JournalSchema extends DBSchema {
  /** Lines of entries. The hash is in the key, so that another entry of the same number never replaces one. */
  entries: { key: [number: number, hash: string]; value: string }
  /** Lines of fills under way: at -1 the fill, then what became of each binding. Removed when the entry is there. */
  open: { key: [fill: string, index: number]; value: string }
  /** Attachments; their key is their checksum. */
  blobs: { key: string; value: { type: string; bytes: ArrayBuffer } }
}

export type Journal = IDBPDatabase<JournalSchema>

interface Buckets {
  open: (name: string, options: { persisted: boolean; durability: string }) => Promise<{ indexedDB: IDBFactory }>
  keys: () => Promise<string[]>
  delete: (name: string) => Promise<void>
}

const buckets = () => (navigator as { storageBuckets?: Buckets }).storageBuckets

/** The one without a run is that of a version that had one for all. */
const bucketOf = (run: string): string => (run ? `journal-${run}` : 'journal')

/** The name of a run's database, where all stand side by side. */
export const databaseOf = (run: string): string => (run ? `gapsum journal ${run}` : 'gapsum journal')

let opened: Promise<Journal> | undefined
let openedIn: IDBFactory | undefined

/** Opens the second copy of a run; whoever opens it closes it. */
export async function openJournal(run: string): Promise<Journal> {
  // A bucket that is not persistent is kept as long as the book itself: the extension may store without limit.
  const bucket = await buckets()?.open(bucketOf(run), { persisted: true, durability: 'strict' })
  const request = bucket ? bucket.indexedDB.open(databaseOf(''), 1) : indexedDB.open(databaseOf(run), 1)
  const db = await new Promise<IDBDatabase>((resolve, reject) => {
    request.addEventListener('upgradeneeded', () => {
      for (const name of ['entries', 'open', 'blobs']) request.result.createObjectStore(name)
    })
    request.addEventListener('success', () => resolve(request.result))
    request.addEventListener('error', () => reject(request.error ?? new Error('The second copy did not open.')))
  })
  db.addEventListener('versionchange', () => db.close())
  return wrap(db) as unknown as Journal
}

async function open(): Promise<Journal> {
  const db = await openJournal(await runId())
  db.addEventListener('close', () => {
    opened = undefined
  })
  return db
}

/** Opens the second copy of this run, once per page or worker. */
export function journal(): Promise<Journal> {
  // Each test has a factory of its own.
  if (openedIn !== indexedDB) opened = undefined
  openedIn = indexedDB
  opened ??= open().catch((error: unknown) => {
    opened = undefined
    throw error
  })
  return opened
}

/** Ends the connection of this page; the next call opens it again. */
export async function closeJournal(): Promise<void> {
  const closing = opened
  opened = undefined
  const db = await closing?.catch(() => undefined)
  db?.close()
}

/** Earlier runs of the browser whose second copy is still there. */
export async function earlierRuns(): Promise<string[]> {
  const current = await runId()
  const names = (await buckets()?.keys()) ?? (await indexedDB.databases()).map(({ name = '' }) => name)
  const stem = buckets() ? bucketOf('') : databaseOf('')
  return names.flatMap((name) => {
    if (!name.startsWith(stem)) return []
    const run = name.slice(stem.length + 1)
    return run === current ? [] : [run]
  })
}

/** Removes the second copy of an earlier run. */
export async function removeJournal(run: string): Promise<void> {
  const all = buckets()
  if (all) return all.delete(bucketOf(run))
  const request = indexedDB.deleteDatabase(databaseOf(run))
  await new Promise<void>((resolve, reject) => {
    request.addEventListener('success', () => resolve())
    request.addEventListener('error', () => reject(request.error ?? new Error('The second copy was not removed.')))
  })
}
