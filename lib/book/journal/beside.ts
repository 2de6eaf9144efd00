/**
 * The second copy of the books beside: flat files, a folder for each, written when entries were taken in. Where a browser
 * has no such files, what is lost is told, with the file to take in again.
 */
import { database, type Db } from '../database.ts'
import { entriesForwards } from '../entries.ts'
import { othersIn, otherRecord, putBeside } from '../others.ts'
import type { OtherBook } from '../other-schema.ts'
import { seal } from '../chain.ts'
import type { Entry } from '../schema.ts'
import { copy } from './copies.ts'
import { closedFiles, linesIn, numbersIn, putLines, type Line } from './files.ts'
import { fromLine, toLine } from './line.ts'

type Folder = FileSystemDirectoryHandle

async function folderOf(key: string): Promise<Folder | undefined> {
  try {
    const root = await (navigator.storage as Partial<StorageManager> | undefined)?.getDirectory?.()
    return await root?.getDirectoryHandle(`beside-${key}`, { create: true })
  } catch {
    return undefined
  }
}

/** So many entries are read and written at a time. */
const batch = 256

async function* linesAfter(key: string, after: number): AsyncGenerator<Line[]> {
  let some: Line[] = []
  for await (const entry of entriesForwards(after, key)) {
    some.push({ number: entry.number, line: toLine(entry) })
    if (some.length < batch) continue
    yield some
    some = []
  }
  if (some.length > 0) yield some
}

/** Writes what the copy of a book lacks. Never throws: the next start writes it. */
export async function copyBeside({ key, count }: Pick<OtherBook, 'key' | 'count'>): Promise<void> {
  try {
    const dir = await folderOf(key)
    if (!dir) return
    const copied = new Set<number>()
    for (const file of await closedFiles(dir)) for (const number of numbersIn(file)) copied.add(number)
    let after = 0
    while (copied.has(after + 1)) after++
    if (after < count) await putLines(dir, linesAfter(key, after), [])
  } catch (error) {
    console.error('The copy of a book beside was not written; the next start writes it.', error)
  }
}

/** What was lost of a book beside, and how much of that was given back. */
export interface BesideFound {
  name: string
  held: number
  here: number
  given: number
  /** The file that it was taken in from last. */
  file: string
}

/** Completes the books beside from their copies, and the copies from them. @returns those that had lost something */
export async function levelOthers(db: Db): Promise<BesideFound[]> {
  const found: BesideFound[] = []
  for (const other of await othersIn(db)) {
    const { key, name, count, hash, takenIn, left } = other
    const mine = await database(key)
    const whole = async () =>
      (await mine.get('entries', count))?.hash === hash && (await mine.count('entries')) >= count
    if (await whole()) {
      await copyBeside(other)
      continue
    }
    const here = await mine.count('entries')
    const given = await giveBack(key, count)
    const now = here + given
    // What nobody has any more is told once.
    if (given === 0 && left === here) continue
    found.push({ name, held: count, here, given, file: takenIn.at(-1)?.file ?? '' })
    const { left: _, ...rest } = other
    const kept = (await whole()) ? rest : { ...rest, left: now }
    await db.put('single', kept, otherRecord(key))
    await copy('single', otherRecord(key), kept)
  }
  return found
}

/** Puts back the entries of the copy that the tables lack, as far as their own seals fit. */
async function giveBack(key: string, count: number): Promise<number> {
  const dir = await folderOf(key)
  const have = new Set(await (await database(key)).getAllKeys('entries'))
  let given = 0
  let some: Entry[] = []
  const put = async () => {
    const fits = await Promise.all(some.map(async (entry) => (await seal(entry).catch(() => '')) === entry.hash))
    const sound = some.filter((_, at) => fits[at])
    await putBeside(key, sound)
    for (const { number } of sound) have.add(number)
    given += sound.length
    some = []
  }
  for (const file of dir ? await closedFiles(dir) : []) {
    for await (const line of linesIn(file)) {
      const entry = fromLine(line) as Entry | undefined
      if (typeof entry?.number !== 'number' || entry.number > count || have.has(entry.number)) continue
      some.push(entry)
      if (some.length === batch) await put()
    }
    await put()
  }
  return given
}
