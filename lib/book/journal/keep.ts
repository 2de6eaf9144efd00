/**
 * Writing the second copy. Each write follows the commit in the database and comes before the answer, so that a kill
 * never tears both at once, and what was answered is in both. All of them are strict: a log that ends with a whole
 * record is never torn by a power cut.
 */
import type { ReceiptLine } from '../../form/schema.ts'
import type { Head } from '../database.ts'
import { isFill } from '../rows.ts'
import type { Entry, OpenFill } from '../schema.ts'
import { ownStorage } from './copies.ts'
import { fromLine, toLine } from './line.ts'
import { closeJournal, journal } from './place.ts'

/** Where the extension's own storage keeps number and hash of the newest entry. */
export const headName = 'book head'

export const openOf = (fill: string): IDBKeyRange => IDBKeyRange.bound([fill, -1], [fill, Infinity])

async function failed(error: unknown): Promise<void> {
  console.error('The second copy was not written; the next start makes it.', error)
  // The next write opens it anew.
  await closeJournal()
}

/** A copy that cannot be written keeps nobody from working: the database has it, and the next start compares them. */
async function kept(work: Promise<unknown>): Promise<void> {
  try {
    await work
  } catch (error) {
    await failed(error)
  }
}

/** Copies entries that the database has, in the order of their numbers, and notes the last one as the head. */
export function journalEntries(entries: readonly Entry[]): Promise<void> {
  const last = entries.at(-1)
  return last ? kept(Promise.all([writeEntries(entries), writeHead(last, entries)])) : Promise.resolve()
}

export async function writeEntries(entries: readonly Entry[]): Promise<void> {
  const tx = (await journal()).transaction(['entries', 'open'], 'readwrite', { durability: 'strict' })
  const writes: Promise<unknown>[] = []
  // Of many entries few ended a fill that is under way here.
  const open =
    entries.length > 1 ? new Set((await tx.objectStore('open').getAllKeys()).map(([fill]) => fill)) : undefined
  for (const entry of entries) {
    writes.push(tx.objectStore('entries').put(toLine(entry), [entry.number, entry.hash]))
    if (isFill(entry) && (!open || open.has(entry.id))) writes.push(tx.objectStore('open').delete(openOf(entry.id)))
  }
  tx.commit()
  await Promise.all([...writes, tx.done])
}

/** So many of the newest entries stand in the extension's own storage too, each of at most so many characters. */
const [tailLength, longestInTail] = [16, 300_000]

const tailName = (number: number): string => `book tail ${number % tailLength}`

/** Notes the newest entry as the head; of the `newest` entries those that were written last are kept beside it, whole. */
export async function writeHead({ number, hash }: Head, newest: readonly Entry[] = []): Promise<void> {
  const lines = newest.slice(-tailLength).map((entry): [string, string] => [tailName(entry.number), toLine(entry)])
  const tail = Object.fromEntries(lines.filter(([, line]) => line.length <= longestInTail))
  await ownStorage()?.set({ ...tail, [headName]: { number, hash } })
}

/** The newest entries as the extension's own storage has them: those that lead to the head, the newest first. */
export async function keptTail(head: Head): Promise<Entry[]> {
  const storage = ownStorage()
  if (!storage || head.number === 0) return []
  const lines = await storage.get(Array.from({ length: tailLength }, (_, at) => tailName(at)))
  const tail: Entry[] = []
  let { number, hash } = head
  while (number > 0 && tail.length < tailLength) {
    const entry = fromLine(lines[tailName(number)]) as Entry | undefined
    if (entry?.number !== number || entry.hash !== hash) break
    tail.push(entry)
    number--
    hash = entry.previous
  }
  return tail
}

/** The newest entry as the extension's own storage has it. */
export async function keptHead(): Promise<Head | undefined> {
  const head = (await ownStorage()?.get(headName))?.[headName] as Head | undefined
  return typeof head?.number === 'number' && typeof head.hash === 'string' ? head : undefined
}

/** Copies a fill that begins. */
export const journalFill = (open: OpenFill): Promise<void> => kept(writeOpen([open.id, -1], open))

/** Copies what became of one binding. */
export const journalFillLine = (fill: string, index: number, line: ReceiptLine): Promise<void> =>
  kept(writeOpen([fill, index], line))

async function writeOpen(key: [string, number], value: object): Promise<void> {
  const tx = (await journal()).transaction('open', 'readwrite', { durability: 'strict' })
  const put = tx.store.put(toLine(value), key)
  tx.commit()
  await Promise.all([put, tx.done])
}

/** Copies the bytes of an attachment; those that are there already are not written again. */
export function journalBlob(hash: string, type: string, bytes: ArrayBuffer): Promise<void> {
  const write = async () => {
    const tx = (await journal()).transaction('blobs', 'readwrite', { durability: 'strict' })
    if ((await tx.store.getKey(hash)) === undefined) await tx.store.put({ type, bytes }, hash)
    await tx.done
  }
  return kept(write())
}
