/** All that the second copy is made of: this run's journal, those of earlier runs, and the files they were put away in. */
import { fromLine } from './line.ts'
import {
  clearFiles,
  closedFiles,
  damagedFiles,
  filedBlobs,
  folder,
  linesIn,
  mergeFiles,
  numbersIn,
  putBlob,
  putLines,
  type Closed,
  type Line,
} from './files.ts'
import { earlierRuns, journal, openJournal, removeJournal, type Journal } from './place.ts'
import type { Entry } from '../schema.ts'

/** So many entries are read and written at a time. */
export const batch = 256

export interface Sources {
  now: Journal
  /** Those of earlier runs that are in no file yet. */
  earlier: { run: string; journal: Journal }[]
  dir: FileSystemDirectoryHandle | undefined
  files: Closed[]
  /** Numbers of the entries that the second copy has. */
  numbers: Set<number>
  /** Whether it has more than one line for a number. */
  twice: boolean
}

/** Does something with all of the second copy. Call it from one page or worker at a time. */
export async function withSources<T>(work: (all: Sources) => Promise<T>): Promise<T> {
  const dir = await folder().catch(() => undefined)
  const files = dir ? await closedFiles(dir) : []
  const filed = new Set(files.flatMap(({ runs }) => runs))
  const now = await journal()
  const earlier: Sources['earlier'] = []
  try {
    for (const run of await earlierRuns()) if (!filed.has(run)) earlier.push({ run, journal: await openJournal(run) })
    const all = { now, earlier, dir, files, numbers: new Set<number>(), twice: false }
    let lines = 0
    for (const file of files) {
      lines += file.lines
      for (const number of numbersIn(file)) all.numbers.add(number)
    }
    for (const one of journals(all)) {
      const keys = await one.getAllKeys('entries')
      lines += keys.length
      for (const [number] of keys) all.numbers.add(number)
    }
    all.twice = lines > all.numbers.size
    return await work(all)
  } finally {
    for (const one of earlier) one.journal.close()
  }
}

/** The journals, this run's first. */
export const journals = ({ now, earlier }: Sources): Journal[] => [now, ...earlier.map((one) => one.journal)]

/** The lines of a journal's entries that are asked for, some at a time. */
async function* journalLines(from: Journal, asked: (number: number) => boolean): AsyncGenerator<Line[]> {
  const keys = (await from.getAllKeys('entries')).filter(([number]) => asked(number))
  for (let at = 0; at < keys.length; at += batch) {
    const some = keys.slice(at, at + batch)
    const lines = await Promise.all(some.map((key) => from.get('entries', key)))
    yield some.flatMap(([number], place) => (lines[place] === undefined ? [] : [{ number, line: lines[place] }]))
  }
}

async function* entriesOfFile(file: Pick<Closed, 'file' | 'bytes'>): AsyncGenerator<Entry[]> {
  let some: Entry[] = []
  for await (const line of linesIn(file)) {
    const entry = fromLine(line) as Entry | undefined
    if (typeof entry?.number === 'number') some.push(entry)
    if (some.length < batch) continue
    yield some
    some = []
  }
  if (some.length > 0) yield some
}

/** The entries that are asked for, as far as their checksums fit; their seals are not looked at. */
export async function* entriesIn(all: Sources, asked: (number: number) => boolean): AsyncGenerator<Entry[]> {
  const whole = (entry: Entry | undefined) => typeof entry?.number === 'number' && asked(entry.number)
  for (const one of journals(all))
    for await (const lines of journalLines(one, asked))
      yield lines.map(({ line }) => fromLine(line) as Entry).filter(whole)
  for (const file of all.files) {
    if (!numbersIn(file).some(asked)) continue
    for await (const entries of entriesOfFile(file)) yield entries.filter(whole)
  }
}

/** What can still be read of files that do not end as they should. */
export async function* entriesInDamaged({ dir }: Sources): AsyncGenerator<Entry[]> {
  for (const file of dir ? await damagedFiles(dir) : []) yield* entriesOfFile(file)
}

/**
 * Where several entries bear one number, the one that leads to the newest fingerprint known. @returns hashes by number
 */
export async function chosen(all: Sources, newest: string): Promise<Map<number, string>> {
  const links = new Map<string, { number: number; previous: string }>()
  for await (const entries of entriesIn(all, () => true))
    for (const { hash, number, previous } of entries) links.set(hash, { number, previous })
  const byNumber = new Map<number, string>()
  let last = ''
  for (const [hash, { number }] of links) {
    byNumber.set(number, hash)
    if (number >= (links.get(last)?.number ?? 0)) last = hash
  }
  // Backwards from the newest: each entry names the one before it.
  let hash = links.has(newest) ? newest : last
  for (let link = links.get(hash); link; link = links.get(hash)) {
    byNumber.set(link.number, hash)
    hash = link.previous
  }
  return byNumber
}

/**
 * Puts what earlier runs wrote away in files. What a file was made of goes at the next start of the browser, so that it
 * is there for some time after the file was written.
 * @param lost whether something is missing: then nothing is removed that may still be read by somebody
 */
export async function putAway(lost: boolean): Promise<void> {
  await withSources(async ({ dir, earlier, files }) => {
    if (!dir) return
    const filed = new Set(files.flatMap(({ runs }) => runs))
    if (!lost) {
      for (const run of await earlierRuns()) if (filed.has(run)) await removeJournal(run)
      await clearFiles(dir)
    }
    const there = new Set((await filedBlobs(dir)).map(({ hash }) => hash))
    for (const { run, journal: from } of earlier) {
      const blobs = await from.getAllKeys('blobs')
      if (blobs.length === 0 && (await from.count('entries')) === 0) {
        from.close()
        await removeJournal(run)
        continue
      }
      for (const hash of blobs) {
        const blob = there.has(hash) ? undefined : await from.get('blobs', hash)
        if (blob) await putBlob(dir, { hash, type: blob.type }, blob.bytes)
      }
      await putLines(
        dir,
        journalLines(from, () => true),
        [run],
      )
    }
    const left = new Set(await earlierRuns())
    if (earlier.length > 0) await mergeFiles(dir, (run) => left.has(run))
  })
}
