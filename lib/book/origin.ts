/**
 * Where entries come from. Each entry bears the id of the book it was written in, under its seal; and the book keeps
 * beside its entries which of them it took in from a file, and when.
 */
import { browser } from '../browser.ts'
import { database } from './database.ts'
import type { Entry } from './schema.ts'

/** Entries `from` to `to` that came out of a file. */
export interface TakenIn {
  from: number
  to: number
  /** When they were taken in. */
  at: string
  /** The file's name. */
  file: string
}

export interface Origins {
  /** Id of this book: a random number that says nothing of who keeps it. */
  book: string
  takenIn: TakenIn[]
}

const name = 'origins'

/** Kept in the extension's own storage too, which a lost database does not take along. */
const ownStorage = () => (browser as Partial<typeof browser> | undefined)?.storage?.local

async function keptApart(): Promise<Origins | undefined> {
  return (
    await ownStorage()
      ?.get(name)
      .catch(() => undefined)
  )?.[name] as Origins | undefined
}

/** What is known of where the entries of this book come from. */
export async function origins(): Promise<Origins> {
  const db = await database()
  const kept = (await db.get('single', name)) as Origins | undefined
  if (kept) return kept
  const begun = (await keptApart()) ?? { book: crypto.randomUUID(), takenIn: [] }
  const tx = db.transaction('single', 'readwrite', { durability: 'strict' })
  // Another page may have begun it meanwhile.
  const meanwhile = (await tx.store.get(name)) as Origins | undefined
  if (!meanwhile) await tx.store.put(begun, name)
  await tx.done
  await copyApart(meanwhile ?? begun)
  return meanwhile ?? begun
}

/** Keeps the same beside the database; where that fails the database has it. */
export async function copyApart(now: Origins): Promise<void> {
  await ownStorage()
    ?.set({ [name]: now })
    .catch(() => undefined)
}

/** The record with entries that were just added from a file; batches of one file become one range. */
export function withTakenIn(before: Origins, added: TakenIn): Origins {
  const last = before.takenIn.at(-1)
  const goesOn = last?.at === added.at && last.file === added.file && last.to === added.from - 1
  const takenIn = goesOn ? [...before.takenIn.slice(0, -1), { ...last, to: added.to }] : [...before.takenIn, added]
  return { ...before, takenIn }
}

/**
 * 'typed here': written in this book. 'taken in': came out of a file. 'of another book': bears the id of another book,
 * and no file is known. 'not known': written by a version that kept no origin.
 */
export type Origin =
  | { is: 'typed here' | 'not known' }
  | { is: 'of another book'; book: string }
  | { is: 'taken in'; book: string; at: string; file: string }

export const isTakenIn = (number: number, { takenIn }: Origins): boolean =>
  takenIn.some(({ from, to }) => from <= number && number <= to)

export function originOf(entry: Pick<Entry, 'number' | 'book'>, { book, takenIn }: Origins): Origin {
  const from = takenIn.findLast((one) => one.from <= entry.number && entry.number <= one.to)
  if (from) return { is: 'taken in', book: entry.book ?? '', at: from.at, file: from.file }
  if (entry.book === undefined) return { is: 'not known' }
  return entry.book === book ? { is: 'typed here' } : { is: 'of another book', book: entry.book }
}
