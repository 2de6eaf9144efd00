/** What this browser keeps of the shelf. Not in exports or backups: keys and the folder belong to one browser. */
import { database, type ShelfRecord } from '../database.ts'
import { announce } from '../notice.ts'
import { newKeys } from './segment.ts'

const name = 'shelf'

/** The record; nothing while no shelf is used. */
export async function shelfRecord(): Promise<ShelfRecord | undefined> {
  return (await (await database()).get('single', name)) as ShelfRecord | undefined
}

/** Names this book on the shelf, and makes its keys where it has none yet; `folder`: where the browser can keep one. */
export async function saveShelf(shelf: string, folder?: FileSystemDirectoryHandle): Promise<ShelfRecord> {
  const before = await shelfRecord()
  const keys = before?.keys ?? (await newKeys())
  const kept = folder ?? before?.folder
  const record: ShelfRecord = { shelf: shelf.trim().slice(0, 200), keys, ...(kept && { folder: kept }) }
  const tx = (await database()).transaction('single', 'readwrite', { durability: 'strict' })
  await Promise.all([tx.store.put(record, name), tx.done])
  announce({ what: 'settings' })
  return record
}

/** Forgets the folder. What is on the shelf stays there, and what was taken in stays here. */
export async function leaveShelf(): Promise<void> {
  const before = await shelfRecord()
  if (!before) return
  const { folder: _, ...rest } = before
  const tx = (await database()).transaction('single', 'readwrite', { durability: 'strict' })
  await Promise.all([tx.store.put(rest, name), tx.done])
  announce({ what: 'settings' })
}
