/** Each test begins with an empty database of its own, and an empty second copy. */
import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { afterAll, afterEach } from 'vitest'
import { closeDatabase } from '../../lib/book/database.ts'
import { closeJournal } from '../../lib/book/journal/place.ts'
import { closeNotices } from '../../lib/book/notice.ts'

/** Ends the connection as a crash of the page does; what was committed stays. */
export const reopen = closeDatabase

afterEach(async () => {
  await closeDatabase()
  await closeJournal()
  globalThis.indexedDB = new IDBFactory()
})

afterAll(closeNotices)
