/**
 * Copies of what is typed and set, in the extension's own storage (`storage.local`), where the browser keeps them apart
 * from the database. Read only when the database has lost something. The popup writes here at each keystroke, so this
 * file stays small.
 */
import { browser } from '../../browser.ts'
import { toLine } from './line.ts'

/** Tables of the database that are copied record by record. */
export const copiedTables = ['jobs', 'devices', 'maps', 'limits', 'tombstones', 'single'] as const
export type CopiedTable = (typeof copiedTables)[number]

export const copyPrefix = 'copy '

/** The extension's own storage; nothing outside a browser. */
export const ownStorage = () => (browser as typeof browser | undefined)?.storage?.local

/** Under which name the copy of a record is kept. The key is that of the record in its table. */
export const copyName = (table: CopiedTable, key: IDBValidKey): string => `${copyPrefix}${table} ${JSON.stringify(key)}`

/**
 * Keeps a copy of a record, or takes it away when there is no value. Sent at once, so that it also leaves a page that
 * closes. Never throws: a copy that is missing is made at the next start.
 */
export function copy(table: CopiedTable, key: IDBValidKey, value?: object): Promise<void> {
  const name = copyName(table, key)
  const storage = ownStorage()
  const done = value ? storage?.set({ [name]: toLine(value) }) : storage?.remove(name)
  return Promise.resolve(done).catch((error: unknown) => console.error('The second copy was not written.', error))
}
