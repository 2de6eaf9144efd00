/**
 * The books that are kept beside one's own: read-only, each in tables of its own. What is known of each is a record in
 * one's own database, copied to `storage.local` like all that is typed over.
 */
import { database, type Db } from './database.ts'
import { index } from './indexing.ts'
import { copy } from './journal/copies.ts'
import { announce } from './notice.ts'
import { otherBookSchema, type OtherBook } from './other-schema.ts'
import { check } from './check.ts'
import type { Entry } from './schema.ts'
import { allSound } from './sound.ts'
import { say } from '../words/say.ts'

export type { OtherBook }

export const otherPrefix = 'other '
export const otherRecord = (key: string): string => otherPrefix + key

/** The records of such books in one's own database. */
export async function othersIn(db: Db): Promise<OtherBook[]> {
  const all = await db.getAll('single', IDBKeyRange.bound(otherPrefix, `${otherPrefix}\uffff`))
  return allSound(otherBookSchema, all).toSorted((a, b) => a.name.localeCompare(b.name))
}

/** All books that are kept beside one's own, those put away too. */
export const allOthers = async (): Promise<OtherBook[]> => othersIn(await database())

/** Those that lists and search show. */
export const listOthers = async (): Promise<OtherBook[]> => (await allOthers()).filter(({ putAway }) => !putAway)

/** What a book beside is called; empty for one's own. */
export async function nameOfBook(key: string): Promise<string> {
  return key ? ((await allOthers()).find((one) => one.key === key)?.name ?? say`a book that is not here`) : ''
}

/** Keeps what is known of a book beside. */
export async function saveOther(other: OtherBook): Promise<void> {
  const kept = check(otherBookSchema, other, say`The book`)
  const tx = (await database()).transaction('single', 'readwrite', { durability: 'strict' })
  await Promise.all([tx.store.put(kept, otherRecord(kept.key)), tx.done, copy('single', otherRecord(kept.key), kept)])
  announce({ what: 'entries' })
}

/** Changes what a book beside is called. */
export async function renameOther(key: string, name: string): Promise<void> {
  const other = (await allOthers()).find((one) => one.key === key)
  if (other) await saveOther({ ...other, name: name.trim() || other.name })
}

/** Takes a book out of all lists, or brings it back. Its entries stay. */
export async function putAwayOther(key: string, away: boolean): Promise<void> {
  const other = (await allOthers()).find((one) => one.key === key)
  if (!other) return
  const { putAway: _, ...rest } = other
  await saveOther(away ? { ...rest, putAway: new Date().toISOString() } : rest)
}

/**
 * Adds entries to the tables of a book beside; they were held to their seals and to one another before. What is there
 * under a number stays: one that was cut off goes on.
 */
export async function putBeside(key: string, entries: readonly Entry[]): Promise<void> {
  const [first, last] = [entries[0], entries.at(-1)]
  if (!first || !last) return
  const tx = (await database(key)).transaction(['entries', 'rows', 'words', 'single'], 'readwrite', {
    durability: 'strict',
  })
  const there = new Set(await tx.objectStore('entries').getAllKeys(IDBKeyRange.bound(first.number, last.number)))
  await Promise.all([
    ...entries.flatMap((entry) => (there.has(entry.number) ? [] : tx.objectStore('entries').add(entry))),
    index(entries, { rows: tx.objectStore('rows'), words: tx.objectStore('words') }),
    tx.objectStore('single').put({ number: last.number, hash: last.hash }, 'head'),
    tx.done,
  ])
}
