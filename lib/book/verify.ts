/** Checks the whole book: the chain, and that list, search and attachments are what its entries say. */
import { canonical } from './canonical.ts'
import { largest } from './attachments.ts'
import { misfit, verifyChain, type Verdict } from './chain.ts'
import { database, type Head } from './database.ts'
import { entriesForwards, getHead, keptEntry } from './entries.ts'
import { entrySchema } from './entry-schema.ts'
import { blockOf, blockSize, indexWords, notFound, renewRows } from './indexing.ts'
import { keptHead } from './journal/keep.ts'
import { writtenAnew } from './journal/written-anew.ts'
import type { OtherBook } from './other-schema.ts'
import { rowOf } from './rows.ts'
import type { AttachmentEntry, Entry } from './schema.ts'
import { sha256 } from './sha256.ts'
import { sound } from './sound.ts'
import { correctRow } from './sound-rows.ts'

/** An attachment that is not what its entry names. */
export interface FileFault {
  entry: number
  name: string
  fault: 'missing' | 'changed'
}

export interface Verified {
  chain: Verdict
  /** Entries that the list did not show as they were written; their lines are made again. */
  rows: number[]
  /** Entries that the search did not find by all their words; their words are made again. */
  words: number[]
  files: FileFault[]
}

/**
 * Checks the book from its first entry to its newest, and makes again what list and search have otherwise than entries.
 * @param thorough whether the bytes of attachments are hashed too, and every entry is held to the second copy;
 * otherwise it is only looked whether the attachments are there, and the newest entry is held to the one kept apart
 * @param from goes on from a check that fitted: what came before it is not looked at again
 * @param other a book that is kept beside; its newest entry is held to what was noted when it was taken in
 */
export async function verifyBook(
  thorough: boolean,
  onProgress?: (checked: number) => void,
  other?: Pick<OtherBook, 'key' | 'count' | 'hash'>,
  from?: Verdict,
): Promise<Verified> {
  const key = other?.key ?? ''
  await renewRows(key)
  const before = from?.ok && !thorough && !other ? await stillThere(from) : undefined
  const book = new Book(key, before?.number ?? 0)
  // Read first: an entry may be added meanwhile.
  const apart = other ? undefined : await keptHead().catch(() => undefined)
  const head = other ? { number: other.count, hash: other.hash } : await getHead()
  const whole = await verifyChain(book.read(), { after: before, head, onProgress })
  const walked = before && whole.ok && from?.ok ? withEarlier(whole, from) : whole
  const chain = walked.ok && !other ? await heldToCopy(walked, apart, thorough) : walked
  const rows: number[] = []
  for (const number of book.suspects)
    if (await correctRow(number, book.followUps.get(number) ?? [], book.newest, key)) rows.push(number)
  rows.push(...(await removeInvented(book.newest, key)))
  return {
    chain,
    rows,
    words: await correctWords(before?.number ?? 0, book.newest, key),
    files: await filesOf(book.attachments, thorough),
  }
}

/**
 * The place before the newest entry that an earlier check found: that entry is looked at again, for its time. Undefined
 * when it is another one now, so that all is checked.
 */
async function stillThere({ count, hash }: Verdict & { ok: true }): Promise<Head | undefined> {
  const newest = await keptEntry(count)
  return newest?.hash === hash ? { number: count - 1, hash: newest.previous } : undefined
}

/** A check that went on from an earlier one, as if it had begun with the first entry. */
const withEarlier = (now: Verdict & { ok: true }, earlier: Verdict & { ok: true }): Verdict & { ok: true } => {
  const backwards = [...(earlier.backwards ?? []), ...(now.backwards ?? [])]
  const { backwards: _, ...rest } = now
  return { ...rest, first: earlier.first || now.first, ...(backwards.length > 0 && { backwards }) }
}

/** What somebody who may write into the database can make fit is held to what is kept apart from it. */
async function heldToCopy(
  walked: Verdict & { ok: true },
  apart: Head | undefined,
  thorough: boolean,
): Promise<Verdict> {
  const counted = (await getHead())?.number ?? 0
  if (counted < walked.count) return misfit(counted + 1, 'not counted')
  if (apart && apart.number > walked.count) return misfit(walked.count + 1, 'cut off')
  const anew = await writtenAnew(await database(), apart, thorough)
  return anew === undefined ? walked : misfit(anew, 'written anew')
}

/** So many rows are compared at a time. */
const batch = 100

/** The entries on their way to the chain's check, and what else is to be looked at of them. */
class Book {
  readonly #key: string
  readonly #after: number
  suspects: number[] = []
  followUps = new Map<number, number[]>()
  attachments: AttachmentEntry[] = []
  newest = 0

  constructor(key: string, after: number) {
    this.#key = key
    this.#after = after
  }

  async *read(): AsyncGenerator<Entry> {
    let some: Entry[] = []
    for await (const entry of entriesForwards(this.#after, this.#key)) {
      some.push(entry)
      this.newest = entry.number
      if (some.length === batch) {
        await this.#compare(some)
        some = []
      }
      yield entry
    }
    await this.#compare(some)
  }

  async #compare(entries: readonly Entry[]): Promise<void> {
    const [first, last] = [entries[0], entries.at(-1)]
    if (!first || !last) return
    const kept = await (await database(this.#key)).getAll('rows', IDBKeyRange.bound(first.number, last.number))
    const rows = new Map(kept.map((row) => [row.number, row]))
    for (const entry of entries) {
      // A damaged entry is named by the chain.
      if (!sound(entrySchema, entry)) continue
      if (entry.kind === 'follow-up') {
        const before = this.followUps.get(entry.of)
        if (before) before.push(entry.number)
        else this.followUps.set(entry.of, [entry.number])
      }
      if (entry.kind === 'attachment') this.attachments.push(entry)
      if (canonical(rowOf(entry)) !== canonical(rows.get(entry.number))) this.suspects.push(entry.number)
    }
  }
}

/** Takes away rows after the newest entry that have no entry. */
async function removeInvented(newest: number, key: string): Promise<number[]> {
  const tx = (await database(key)).transaction(['entries', 'rows'], 'readwrite')
  const [after, rows] = [IDBKeyRange.lowerBound(newest, true), tx.objectStore('rows')]
  const [entries, all] = await Promise.all([tx.objectStore('entries').getAllKeys(after), rows.getAllKeys(after)])
  const invented = all.filter((number) => !entries.includes(number))
  await Promise.all([...invented.map((number) => rows.delete(number)), tx.done])
  return invented
}

/** Makes again the words of rows that the index does not have, block by block. */
async function correctWords(first: number, newest: number, key: string): Promise<number[]> {
  const db = await database(key)
  const corrected: number[] = []
  for (let block = blockOf(first); block <= blockOf(newest); block++) {
    const tx = db.transaction(['rows', 'words'], 'readwrite')
    const [rows, shelves] = await Promise.all([
      tx.objectStore('rows').getAll(IDBKeyRange.bound(block * blockSize, (block + 1) * blockSize, false, true)),
      tx.objectStore('words').getAll(IDBKeyRange.bound([block], [block + 1], false, true)),
    ])
    const lacking = notFound(
      rows.filter((row) => typeof row.text === 'string'),
      shelves,
    )
    if (lacking.length > 0) await indexWords(lacking, tx.objectStore('words'))
    await tx.done
    corrected.push(...lacking.map(({ number }) => number))
  }
  return corrected
}

async function filesOf(attachments: readonly AttachmentEntry[], thorough: boolean): Promise<FileFault[]> {
  const db = await database()
  const faults: FileFault[] = []
  for (const { number: entry, file } of attachments) {
    const there = await db.getKey('blobs', file.sha256)
    if (there === undefined) faults.push({ entry, name: file.name, fault: 'missing' })
    else if (thorough && file.size <= largest) {
      const blob = await db.get('blobs', file.sha256)
      if (!blob || (await sha256(blob.bytes)) !== file.sha256) faults.push({ entry, name: file.name, fault: 'changed' })
    }
  }
  return faults
}
