/**
 * The worker that reads book files, so that the page has its time for the person. It says nothing in words: where
 * anything is not as it must be it ends, and the page reads on from there and says what is wrong.
 */
import { blockOf } from './indexing.ts'
import { database, type Head } from './database.ts'
import { countEntries, putSealed } from './entries.ts'
import { openBookFile } from './json.ts'
import { copyToFile } from './journal/to-file.ts'
import { outlinesOf, withSeal, type Outlined } from './outlines.ts'
import type { Origins } from './origin.ts'
import { readable, type Posted } from './posted.ts'
import type { Entry } from './schema.ts'

/** `known`: seals of records that fitted when they were read before. */
export type Asked =
  | { work: 'outline'; file: Posted }
  /** Adds the entries after a number. */
  | { work: 'add'; file: Posted; known: string[]; after: number; from: { file: string; at: string } }
  | { work: 'stop' }

export type Told =
  /** Records in their order, how much of the file was read, from 0 to 1, and seals of those that fitted. */
  | { outlined: Outlined<string>[]; share: number; known: string[] }
  /** How many entries are added, the newest of them, and where entries come from. */
  | { added: number; last: Head; origins: Origins | undefined }
  /** The book has got an entry since it was planned. */
  | { newest: number }
  | { ended: true }
  | { trouble: string }

/** The worker's end of the line. */
export interface Line {
  postMessage: (told: Told) => void
  addEventListener: (type: 'message', listener: (event: MessageEvent<Asked>) => void) => void
}

/** So many records are told at a time. */
const batch = 128

async function outline(file: Posted, tell: (told: Told) => void): Promise<void> {
  const known = new Set<string>()
  const source = await openBookFile(readable(file), { known })
  let share = 0
  let some: Outlined[] = []
  const flush = async () => {
    const outlined = await Promise.all(some.map(withSeal))
    some = []
    tell({ outlined, share, known: [...known] })
    known.clear()
  }
  const read = source.items((now) => {
    share = now
  })
  try {
    for await (const one of outlinesOf(read)) {
      some.push(one)
      if (some.length === batch) await flush()
    }
  } finally {
    // What fitted before the trouble is told.
    await flush()
  }
}

/** Adds entries a block of the index at a time: one is written while the next is read. */
async function add(
  { file, known, after, from }: Extract<Asked, { work: 'add' }>,
  tell: (told: Told) => void,
  stop: { now: boolean },
) {
  const db = await database()
  const source = await openBookFile(readable(file), { known: new Set(known) })
  let added = 0
  let some: Entry[] = []
  let writing: Promise<boolean> = Promise.resolve(true)
  const write = async (entries: readonly Entry[]): Promise<boolean> => {
    const newest = await countEntries()
    const put = newest < entries[0]!.number ? await putSealed(db, entries, from) : { newest }
    if ('newest' in put) {
      tell(put)
      return false
    }
    await copyToFile(entries)
    added += entries.length
    const { number, hash } = entries.at(-1)!
    tell({ added, last: { number, hash }, origins: put.origins })
    return true
  }
  const next = async (): Promise<boolean> => {
    const entries = some
    some = []
    if (!(await writing)) return false
    if (entries.length > 0) {
      writing = write(entries)
      writing.catch(() => undefined)
    }
    return true
  }
  try {
    for await (const { kind, value } of source.items()) {
      if (stop.now) return
      if (kind !== 'entry' || value.number <= after) continue
      if (some[0] && blockOf(value.number) !== blockOf(some[0].number) && !(await next())) return
      some.push(value)
    }
    await next()
  } finally {
    // What is being written is in before anything is said of it.
    await writing
  }
}

/** Serves one page until it ends the worker. */
export function serve(line: Line): void {
  const stop = { now: false }
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- the page has no target origin here
  const tell = (told: Told) => line.postMessage(told)
  line.addEventListener('message', ({ data }) => {
    if (data.work === 'stop') {
      stop.now = true
      return
    }
    const work = data.work === 'outline' ? outline(data.file, tell) : add(data, tell, stop)
    work.then(
      () => tell({ ended: true }),
      (error: unknown) => tell({ trouble: String(error) }),
    )
  })
}
