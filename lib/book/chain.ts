/** The chain of the book: each entry is sealed with a hash over itself and its predecessor's hash. */
import { canonical } from './canonical.ts'
import type { Head } from './database.ts'
import type { Entry } from './schema.ts'
import { sha256 } from './sha256.ts'
import { say } from '../words/say.ts'

type WithoutHash<T> = T extends unknown ? Omit<T, 'hash'> : never
export type Unsealed = WithoutHash<Entry>

/** SHA-256 (FIPS 180-4) over the canonical JSON (RFC 8785) of an entry without its own hash, in hexadecimal. */
export async function seal(entry: Unsealed | Entry): Promise<string> {
  const { hash: _, ...rest } = entry as Entry
  return sha256(canonical(rest) ?? '')
}

export type Misfit = 'missing' | 'changed' | 'out of place' | 'cut off' | 'not counted' | 'written anew'

/** An entry that bears an earlier time than the one before it. */
export type Backwards = { entry: number; at: string; before: string }

export type Verdict =
  | { ok: true; count: number; first: string; last: string; hash: string; backwards?: Backwards[] }
  | { ok: false; entry: number; misfit: Misfit; message: string }

export type Walk = {
  /** The entry that the walk goes on from; absent: the walk begins with the first entry. */
  after?: Head | undefined
  /** The newest entry as it was last written, when known. */
  head?: Head | undefined
  onProgress?: ((checked: number) => void) | undefined
}

/** Walks a chain and names the first entry that does not fit. */
export async function verifyChain(
  entries: Iterable<Entry> | AsyncIterable<Entry>,
  { after, head, onProgress }: Walk = {},
): Promise<Verdict> {
  let count = after?.number ?? 0
  let first = ''
  let last = ''
  let previous = after?.hash ?? ''
  const backwards: Backwards[] = []
  for await (const [entry, sealed] of withSeals(entries)) {
    const expected = count + 1
    if (entry.number !== expected) {
      return entry.number > expected ? misfit(expected, 'missing') : misfit(entry.number, 'out of place')
    }
    if (sealed !== entry.hash) return misfit(expected, 'changed')
    if (entry.previous !== previous) return misfit(expected, 'out of place')
    if (last && isEarlier(entry.at, last)) backwards.push({ entry: expected, at: entry.at, before: last })
    count = expected
    first ||= entry.at
    last = entry.at
    previous = entry.hash
    onProgress?.(count)
  }
  if (head && head.number > count) return misfit(count + 1, 'cut off')
  if (head && head.number === count && head.hash !== previous) return misfit(count, 'changed')
  return { ok: true, count, first, last, hash: previous, ...(backwards.length > 0 && { backwards }) }
}

/** A clock that is set by a time server goes back by moments: that much is not told. */
const patience = 60_000

/** Whether a time lies before another by more than clocks are corrected by. What is no time is compared as text. */
export function isEarlier(at: string, before: string): boolean {
  const [one, other] = [Date.parse(at), Date.parse(before)]
  return Number.isNaN(one) || Number.isNaN(other) ? at < before : one < other - patience
}

/** So many entries are hashed at a time. */
const batch = 64

/** What has no canonical form was never sealed. */
const sealOrNone = (entry: Entry): Promise<string> => seal(entry).catch(() => '')

async function* withSeals(entries: Iterable<Entry> | AsyncIterable<Entry>): AsyncGenerator<[Entry, string]> {
  let some: Entry[] = []
  const sealed = () =>
    Promise.all(some.map(async (entry): Promise<[Entry, string]> => [entry, await sealOrNone(entry)]))
  for await (const entry of entries) {
    some.push(entry)
    if (some.length < batch) continue
    yield* await sealed()
    some = []
  }
  yield* await sealed()
}

/** What does not fit, in words. */
export function misfit(entry: number, kind: Misfit): Extract<Verdict, { ok: false }> {
  const words: Record<Misfit, string> = {
    missing: say`Entry ${entry} is missing.`,
    changed: say`Entry ${entry} is not what was written: its fingerprint does not fit its content.`,
    'out of place': say`Entry ${entry} does not follow the entry before it.`,
    'cut off': say`Entry ${entry} and what came after it are missing from the end of the book.`,
    'not counted': say`Entry ${entry} is here, and the book counts only ${entry - 1}: its count was changed.`,
    'written anew': say`Entry ${entry} fits the entries beside it, and is not the one whose fingerprint was kept apart from them: the book was written anew.`,
  }
  return { ok: false, entry, misfit: kind, message: words[kind] }
}

/** What to do about a chain that does not fit. */
export const whatToDo = say`Export the book as it is now, and compare it with an earlier export.`

/** What a verified chain means, said where it is shown. */
export const whatChainShows = say`A chain that fits shows that no entry was changed, removed or moved after it was written, unless someone rewrote every later entry too. It does not show that a figure is right, who typed it, or that this machine’s clock was right. To guard against a rewritten book, keep the newest fingerprint somewhere else: in a report, in a letter, in an export.`
