/** The one database of the extension, shared by popup, book and background. */
import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction, type StoreNames } from 'idb'
import { done } from './journal/run.ts'
import type { Origins } from './origin.ts'
import type { OtherBook } from './other-schema.ts'
import type { FormMap, ReceiptLine } from '../form/schema.ts'
import type { Device, Job, KeptLimit } from '../job/schema.ts'
import type { ReviewNotes } from './review-schema.ts'
import type { Row } from './rows.ts'
import type { Entry, OpenFill, Settings } from './schema.ts'

export const tombstoneKinds = ['job', 'device', 'map', 'limit'] as const
export type TombstoneKind = (typeof tombstoneKinds)[number]

/** What was deleted stays; the tombstone hides it, so that an entry can still be traced to it and a slip undone. */
export type Tombstone = { kind: TombstoneKind; id: string; at: string }

/** The newest entry as last written; shows when entries were cut off the end. */
export type Head = { number: number; hash: string }

/** A review file as it was opened, and what the reviewer has written so far. */
export type OpenReview = { id: string; name: string; opened: string; file: ArrayBuffer; notes: ReviewNotes }

export interface BookSchema extends DBSchema {
  jobs: { key: string; value: Job; indexes: { updated: string } }
  devices: { key: string; value: Device }
  /** Every version of every form map. */
  maps: { key: [string, number]; value: FormMap }
  tombstones: { key: [TombstoneKind, string]; value: Tombstone }
  fills: { key: string; value: OpenFill }
  lines: { key: [string, number]; value: { fill: string; index: number; line: ReceiptLine } }
  entries: { key: number; value: Entry; indexes: { fill: string; 'job and map': [string, string] } }
  /** A short form of each entry, for lists and search. */
  rows: { key: number; value: Row; indexes: { at: string; due: string; status: [string, number] } }
  /** By block of entries and first letters: words, and which entries of the block hold them. Since version 2. */
  words: { key: [block: number, start: string]; value: string }
  /** Photos and documents by their SHA-256, each once. Since version 2. */
  blobs: { key: string; value: { sha256: string; type: string; bytes: ArrayBuffer } }
  /** Limits of the owner's own. Since version 2. */
  limits: { key: string; value: KeptLimit }
  /** Review files that stand open, with what was noted of them. Since version 2. */
  reviews: { key: string; value: OpenReview }
  /** Single records by name; a book kept beside has one of its own. */
  single: { key: string; value: Settings | Head | Older | Origins | RowForm | Restoring | OtherBook | ShelfRecord }
}

/** The newest entry of those that have no rows and words yet, and the newest of them that has got them. */
export type Older = { to: number; done?: number }

/** Goes up when rows or words are made otherwise. */
export const rowForm = 3

/** Which form rows and words have; `done`: only up to that entry yet. */
export type RowForm = { rows: number; done?: number }

/** What is known of the shelf: how this book is called there, what it signs with, and the folder where the browser keeps one. */
export type ShelfRecord = { shelf: string; keys: CryptoKeyPair; folder?: FileSystemDirectoryHandle }

/** Stands in a database that was made new, until it has what the second copy of an earlier one gives back. */
export type Restoring = { since: string }

export type Db = IDBPDatabase<BookSchema>

let opened: Promise<Db> | undefined
/** Databases of books that are kept beside one's own, by their key. */
const beside = new Map<string, Promise<Db>>()

type Upgrade = IDBPTransaction<BookSchema, StoreNames<BookSchema>[], 'versionchange'>

function makeVersion1(db: IDBPDatabase<BookSchema>, tx: Upgrade): Promise<unknown> {
  db.createObjectStore('jobs', { keyPath: 'id' }).createIndex('updated', 'updated')
  db.createObjectStore('devices', { keyPath: 'id' })
  db.createObjectStore('maps', { keyPath: ['id', 'version'] })
  db.createObjectStore('tombstones', { keyPath: ['kind', 'id'] })
  db.createObjectStore('fills', { keyPath: 'id' })
  db.createObjectStore('lines', { keyPath: ['fill', 'index'] })
  const entries = db.createObjectStore('entries', { keyPath: 'number' })
  entries.createIndex('fill', 'id', { unique: true })
  entries.createIndex('job and map', ['job.id', 'map.id'])
  db.createObjectStore('rows', { keyPath: 'number' })
  db.createObjectStore('single')
  return tx.objectStore('single').put({ since: new Date().toISOString() }, 'restoring')
}

/** Makes the new tables at once and leaves the words of old entries for later: a popup may close at any moment. */
async function makeVersion2(db: IDBPDatabase<BookSchema>, tx: Upgrade): Promise<void> {
  db.createObjectStore('words')
  db.createObjectStore('blobs', { keyPath: 'sha256' })
  db.createObjectStore('limits', { keyPath: 'id' })
  db.createObjectStore('reviews', { keyPath: 'id' })
  const rows = tx.objectStore('rows')
  rows.createIndex('at', 'at')
  rows.createIndex('due', 'due')
  rows.createIndex('status', ['status', 'number'])
  const newest = await tx.objectStore('entries').openKeyCursor(null, 'prev')
  if (newest) await tx.objectStore('single').put({ to: newest.primaryKey }, 'older')
}

/** `closed`: the connection has ended, or must end to make room for a newer version. */
const openTables = (name: string, closed: () => void): Promise<Db> =>
  openDB<BookSchema>(name, 2, {
    async upgrade(db, from, _, tx) {
      if (from < 1) await makeVersion1(db, tx)
      if (from < 1) await tx.objectStore('single').put({ rows: rowForm }, 'form')
      if (from < 2) await makeVersion2(db, tx)
    },
    // A newer version of the extension wants to change the tables: make room and reopen at the next call.
    blocking: (_, __, event) => {
      ;(event.target as IDBDatabase).close()
      closed()
    },
    terminated: closed,
  })

/**
 * Opens the database once per page or worker.
 * @param book key of a book that is kept beside; empty: one's own
 */
export function database(book = ''): Promise<Db> {
  if (book) return besideIt(book)
  const forget = () => {
    opened = undefined
  }
  opened ??= openTables('gapsum', forget)
    .then(whole)
    .catch((error: unknown) => {
      forget()
      throw error
    })
  return opened
}

/** Each book that is kept beside has tables of its own: no fill can reach them. */
export const databaseBeside = (key: string): string => `gapsum beside ${key}`

function besideIt(key: string): Promise<Db> {
  const forget = () => void beside.delete(key)
  let db = beside.get(key)
  if (!db) {
    db = openTables(databaseBeside(key), forget).catch((error: unknown) => {
      forget()
      throw error
    })
    beside.set(key, db)
  }
  return db
}

/**
 * The database, once it holds what a lost one held: a browser that finds it damaged deletes it and says nothing, or
 * passes over what was written last.
 */
async function whole(db: Db): Promise<Db> {
  const [restoring, known] = await Promise.all([db.get('single', 'restoring'), done('compared')])
  if (restoring) await (await import('./journal/compare.ts')).restore(db)
  else if (known === false) await (await import('./journal/compare.ts')).compareOnce(db)
  return db
}

/** Ends the connection of this page; the next call opens it again. */
export async function closeDatabase(): Promise<void> {
  const closing = [opened, ...beside.values()]
  opened = undefined
  beside.clear()
  for (const db of closing) (await db)?.close()
}
