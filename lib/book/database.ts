/** The one database of the extension, shared by popup, book and background. */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { FormMap } from '../form/schema.ts'
import type { ReceiptLine } from '../form/schema.ts'
import type { Device, Job } from '../job/schema.ts'
import type { Row } from './rows.ts'
import type { Entry, OpenFill, Settings } from './schema.ts'

export const tombstoneKinds = ['job', 'device', 'map'] as const
export type TombstoneKind = (typeof tombstoneKinds)[number]

/** What was deleted stays; the tombstone hides it, so that an entry can still be traced to it and a slip undone. */
export type Tombstone = { kind: TombstoneKind; id: string; at: string }

/** The newest entry as last written; shows when entries were cut off the end. */
export type Head = { number: number; hash: string }

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
  rows: { key: number; value: Row }
  /** Single records by name. */
  single: { key: string; value: Settings | Head }
}

let opened: Promise<IDBPDatabase<BookSchema>> | undefined

/** Opens the database once per page or worker. */
export function database(): Promise<IDBPDatabase<BookSchema>> {
  opened ??= openDB<BookSchema>('gapsum', 1, {
    upgrade(db) {
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
    },
    // A newer version of the extension wants to change the tables: make room and reopen at the next call.
    blocking: () => void closeDatabase(),
    terminated: () => {
      opened = undefined
    },
  }).catch((error: unknown) => {
    opened = undefined
    throw error
  })
  return opened
}

/** Ends the connection of this page; the next call opens it again. */
export async function closeDatabase(): Promise<void> {
  const closing = opened
  opened = undefined
  if (closing) (await closing).close()
}
