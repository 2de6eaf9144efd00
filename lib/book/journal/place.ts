/**
 * Where the second copy of entries is kept: a database that shares no file with the book's own. Chromium keeps all
 * databases of an origin in one log, but those of a storage bucket in another; Firefox has no buckets and keeps each
 * database in a file of its own.
 */
import type { DBSchema, IDBPDatabase } from 'idb'
import { wrap } from 'idb'

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
}

let opened: Promise<Journal> | undefined
let openedIn: IDBFactory | undefined

async function factory(): Promise<IDBFactory> {
  const buckets = (navigator as { storageBuckets?: Buckets }).storageBuckets
  // A bucket that is not persistent is kept as long as the book itself: the extension may store without limit.
  return buckets ? (await buckets.open('journal', { persisted: true, durability: 'strict' })).indexedDB : indexedDB
}

async function open(): Promise<Journal> {
  const request = (await factory()).open('gapsum journal', 1)
  const db = await new Promise<IDBDatabase>((resolve, reject) => {
    request.addEventListener('upgradeneeded', () => {
      for (const name of ['entries', 'open', 'blobs']) request.result.createObjectStore(name)
    })
    request.addEventListener('success', () => resolve(request.result))
    request.addEventListener('error', () => reject(request.error ?? new Error('The second copy did not open.')))
  })
  db.addEventListener('close', () => {
    opened = undefined
  })
  db.addEventListener('versionchange', () => void closeJournal())
  return wrap(db) as unknown as Journal
}

/** Opens the second copy once per page or worker. */
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
