/**
 * Taking in what others have written to the shelf. A segment is used only when it fits in itself, is signed with the key
 * that its book has always signed with, and goes on with what is here of that book. All else is told by name and left.
 */
import { BookError } from '../error.ts'
import { keptEntry } from '../entries.ts'
import { keepBlob } from '../attachments.ts'
import { BesideWriter, commonPart, type OtherPlanned } from '../import-others.ts'
import type { Readable } from '../lines.ts'
import { origins } from '../origin.ts'
import type { Entry } from '../schema.ts'
import { allOthers, saveOther, type OtherBook } from '../others.ts'
import { readSegment, readSegmentName, type Segment, type SegmentName } from './segment.ts'
import { say } from '../../words/say.ts'

/** A file on the shelf: its name without folders, and what reads it. */
export interface ShelfFile {
  name: string
  open: () => Promise<Readable>
}

export interface TakenFromShelf {
  /** Entries that were added, by the name of their book. */
  added: { name: string; entries: number }[]
  /** What does not fit or is not here yet, a sentence each. */
  told: string[]
}

type Named = SegmentName & ShelfFile

const hashIn = ({ entries }: Segment, number: number) => entries.find((entry) => entry.number === number)?.hash

/**
 * Reads the shelf and adds what is new of the books of others. Once `signal` is aborted it ends and says what is in by then.
 * @param onAdded how many entries are in by then
 */
export async function takeInShelf(
  files: Iterable<ShelfFile>,
  onAdded?: (entries: number) => void,
  signal?: AbortSignal,
): Promise<TakenFromShelf> {
  const { book: own } = await origins()
  const books = Map.groupBy(
    [...files].flatMap((file) => {
      const read = readSegmentName(file.name)
      return read && read.book !== own ? Object.assign(read, file) : []
    }),
    ({ book }) => book,
  )
  const result: TakenFromShelf = { added: [], told: [] }
  let all = 0
  for (const [book, segments] of [...books].toSorted(([a], [b]) => (a < b ? -1 : 1))) {
    const reader = new OneBook(book, segments, (entries) => onAdded?.((all += entries)), signal)
    try {
      await reader.takeIn()
    } catch (error) {
      if (!signal?.aborted) throw error
    }
    if (reader.added > 0) result.added.push({ name: reader.name, entries: reader.added })
    result.told.push(...reader.told)
    if (signal?.aborted) break
  }
  return result
}

class OneBook {
  added = 0
  readonly #told = new Set<string>()
  readonly #book: string
  readonly #segments: Named[]
  readonly #onAdded: (entries: number) => void
  readonly #signal: AbortSignal | undefined
  #other: OtherBook | undefined
  #name = ''

  constructor(book: string, segments: Named[], onAdded: (entries: number) => void, signal: AbortSignal | undefined) {
    this.#book = book
    this.#segments = segments.toSorted((a, b) => a.first - b.first || b.last - a.last)
    this.#onAdded = onAdded
    this.#signal = signal
  }

  /** What does not fit, each once. */
  get told(): string[] {
    return [...this.#told]
  }

  /** What the book is called here, or calls itself, or the beginning of its id. */
  get name(): string {
    return this.#other?.name || this.#name || this.#book.slice(0, 8)
  }

  async takeIn(): Promise<void> {
    const others = await allOthers()
    // One that came out of a file is known by the book of its entries.
    this.#other =
      others.find(({ onShelf }) => onShelf?.book === this.#book) ??
      others.find(({ onShelf, book }) => !onShelf && book === this.#book) ??
      (await this.#fromFile(others))
    if (!(await this.#hasOneKey()) || !(await this.#isAsTakenIn())) return
    for (;;) {
      this.#signal?.throwIfAborted()
      const next = (this.#other?.count ?? 0) + 1
      const [segment, rival] = await this.#fitting(next)
      if (!segment) break
      if (rival) {
        this.#told.add(
          say`Two different segments of ${this.name} begin at or before entry ${next} and go on otherwise. One of the two was rewritten, or the book was continued in two places. Neither is taken in.`,
        )
        return
      }
      if (!(await this.#add(segment, next))) return
    }
    this.#tellGap()
  }

  /** The book that came out of a file and ends where a segment ends: the segment is read, for a name proves nothing. */
  async #fromFile(others: readonly OtherBook[]): Promise<OtherBook | undefined> {
    for (const other of others.filter(({ onShelf }) => !onShelf)) {
      for (const segment of this.#segments.filter(({ last }) => last === other.count)) {
        if (!other.hash.startsWith(segment.hash)) continue
        if ((await this.#read(segment))?.head.hash === other.hash) return other
      }
    }
    return undefined
  }

  /** Whether one key signed all that can be read of a book that was not seen on the shelf before. */
  async #hasOneKey(): Promise<boolean> {
    if (this.#other?.onShelf || this.#segments.length < 2) return true
    let key = ''
    for (const segment of this.#segments) {
      this.#signal?.throwIfAborted()
      const read = await this.#read(segment)
      if (!read) continue
      this.#name ||= read.head.name
      key ||= read.head.key
      if (read.head.key === key) continue
      this.#told.add(
        say`The segments of ${this.name} are signed with two different keys. One of the two was not written by that book, or its browser lost its data. Nothing of it is taken in. Ask whose book it is.`,
      )
      return false
    }
    return true
  }

  /** What is here of the book against what the names on the shelf say of the same entries. */
  async #isAsTakenIn(): Promise<boolean> {
    const { key = '', count = 0 } = this.#other ?? {}
    for (const segment of this.#segments.filter(({ last }) => last <= count)) {
      const here = await keptEntry(segment.last, key)
      if (!here || here.hash.startsWith(segment.hash)) continue
      // A name alone proves nothing.
      if (!(await this.#read(segment))) continue
      this.#told.add(this.#rewritten(segment.last))
      return false
    }
    return true
  }

  #rewritten(number: number): string {
    return say`Entry ${number} of ${this.name} on the shelf is not the one that was taken in before. The book was rewritten, or continued in two places. Nothing more of it is taken in. Ask whose book it is.`
  }

  /** A segment that is whole and its book's own; what is wrong with another is told once. */
  async #read(segment: Named): Promise<Segment | undefined> {
    try {
      const read = await readSegment(segment, await segment.open())
      const { onShelf } = this.#other ?? {}
      if (onShelf && onShelf.key !== read.head.key) {
        this.#told.add(
          say`${segment.name}: it is signed with another key than what ${this.name} wrote before. It is not taken in. Ask whose book it is: its browser may have lost its data.`,
        )
        return undefined
      }
      return read
    } catch (error) {
      // The browser's own error: the file went away, is locked, or came in part.
      if (error instanceof DOMException && !this.#signal?.aborted) {
        this.#told.add(
          say`${segment.name}: it cannot be opened or read on this computer now. It is not taken in. Wait until the folder has carried it whole, then visit the shelf again.`,
        )
        return undefined
      }
      if (!(error instanceof BookError)) throw error
      // What is wrong with a line comes with what to do.
      const inLine = error.problems[0]?.path.startsWith('line ')
      this.#told.add(
        inLine
          ? `${segment.name}: ${error.message}`
          : say`${segment.name}: ${error.message} It is not taken in. Wait until the folder has carried it whole, or ask for it again.`,
      )
      return undefined
    }
  }

  /** The segments that hold an entry, whole; the second only where it goes on otherwise. */
  async #fitting(next: number): Promise<[Segment?, Segment?]> {
    const found: Segment[] = []
    for (const segment of this.#segments.filter(({ first, last }) => first <= next && next <= last)) {
      const read = await this.#read(segment)
      if (read) found.push(read)
    }
    // What could not be read is not tried again in this round.
    const [one, ...more] = found.toSorted((a, b) => b.head.last - a.head.last)
    if (!one) return []
    const rival = more.find((other) => hashIn(other, other.head.last) !== hashIn(one, other.head.last))
    return rival ? [one, rival] : [one]
  }

  /** Up to which entry the book is the same as one's own. */
  async #sharedWith(fresh: readonly Entry[]): Promise<number> {
    const { shared = 0, count = 0 } = this.#other ?? {}
    if (shared < count) return shared
    const hashes = fresh.map(({ hash }) => hash)
    return (await commonPart('', hashes, count)).common
  }

  async #add({ head, entries, blobs }: Segment, next: number): Promise<boolean> {
    this.#name = head.name
    const previous = this.#other?.hash ?? ''
    const fresh = entries.filter(({ number }) => number >= next)
    if (fresh[0]?.previous !== previous) {
      this.#told.add(this.#rewritten(next - 1))
      return false
    }
    for (const { bytes, ...blob } of blobs) await keepBlob(blob, bytes)
    const planned: OtherPlanned = {
      of: '',
      name: this.name,
      book: head.book,
      count: head.last,
      hash: head.hash,
      first: fresh[0]?.at ?? '',
      last: entries.at(-1)?.at ?? '',
      into: this.#other?.key ?? '',
      add: fresh.length,
      same: next - 1,
      shared: await this.#sharedWith(fresh),
      refused: '',
      differs: '',
      canBegin: false,
    }
    const from = { file: say`the shelf`, at: new Date().toISOString() }
    const writer = await BesideWriter.begin({ planned, name: this.name, back: false }, from, (added) => {
      this.added += added
      this.#onAdded(added)
    })
    for (const entry of fresh) await writer.take(entry)
    await writer.end()
    const known = this.#other?.key
    const now = (await allOthers()).find(({ key, hash }) => (known ? key === known : hash === head.hash))
    if (now?.hash !== head.hash) return false
    this.#other = now
    if (!now.onShelf) await saveOther((this.#other = { ...now, onShelf: { book: head.book, key: head.key } }))
    return true
  }

  #tellGap(): void {
    const have = this.#other?.count ?? 0
    const next = this.#segments.find(({ first }) => first > have + 1)
    if (!next) return
    const from = have + 1
    const to = next.first - 1
    this.#told.add(
      from === to
        ? say`Entry ${from} of ${this.name} is not here yet; what comes after it waits on the shelf.`
        : say`Entries ${from} to ${to} of ${this.name} are not here yet; what comes after them waits on the shelf.`,
    )
  }
}
