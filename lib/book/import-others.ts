/**
 * Books that a file brings and that are kept beside one's own: the file's own entries where they do not go on with this
 * book, and those that the file's book keeps beside it. Each chain is held to its seals as a whole, and to what is here.
 */
import { misfit } from './chain.ts'
import { database } from './database.ts'
import { keptEntry } from './entries.ts'
import { copyBeside } from './journal/beside.ts'
import { announce } from './notice.ts'
import type { Outline } from './outlines.ts'
import { withTakenIn } from './origin.ts'
import { allOthers, putBeside, saveOther, type OtherBook } from './others.ts'
import type { Entry } from './schema.ts'
import { say } from '../words/say.ts'

/** What a file says of a book that its own book keeps beside it. */
export type BookBeside = Pick<OtherBook, 'key' | 'name' | 'count' | 'hash'>

export interface OtherPlanned {
  /** Key by which the file names the book; empty: the entries of the file itself. */
  of: string
  /** What the book is called here already, or in the file; empty where neither says. */
  name: string
  /** Id of the book that its newest entry was written in. */
  book: string
  count: number
  hash: string
  /** When its first and newest entries were added. */
  first: string
  last: string
  /** Key of the book beside that it goes on with; empty: it is not here yet. */
  into: string
  /** Entries that will be added, and those that are here already. */
  add: number
  same: number
  /** Up to this entry it is the same as one's own book. */
  shared: number
  /** Why it cannot be taken in; empty where it can. */
  refused: string
  /** What does not fit to a book that is here; then it is taken in only when the person says so. */
  differs: string
  /** This book is empty: the file's entries can begin it, and are kept beside only when the person says so. */
  canBegin: boolean
}

/**
 * Up to which entry a chain is the same as a book that is here, and how many entries that one has.
 * @param book key of the book; empty: one's own
 * @param hashes of the chain's entries after entry `before`, up to which both are the same
 */
export async function commonPart(
  book: string,
  hashes: readonly string[],
  before = 0,
): Promise<{ common: number; here: number }> {
  const db = await database(book)
  const here = (await db.transaction('entries').store.openKeyCursor(null, 'prev'))?.primaryKey ?? 0
  // Each entry holds the hash of the one before it: where two are the same, all before them are.
  let [fits, not] = [before, Math.min(here, before + hashes.length) + 1]
  while (not - fits > 1) {
    const middle = Math.floor((fits + not) / 2)
    if ((await db.get('entries', middle))?.hash === hashes[middle - 1 - before]) fits = middle
    else not = middle
  }
  return { common: fits, here }
}

/** The entries of one chain on their way out of a file. */
export class ChainInFile {
  #hashes: string[] = []
  #refused = ''
  #first = ''
  #newest: Outline | undefined

  /** Takes entries with the seals that they should bear. */
  take(entries: readonly Outline[], seals: readonly string[]): void {
    for (const [at, entry] of entries.entries()) {
      if (this.#refused) return
      const expected = this.#hashes.length + 1
      const { number, hash, previous } = entry
      const kind =
        number > expected
          ? 'missing'
          : number < expected || previous !== (this.#hashes.at(-1) ?? '')
            ? 'out of place'
            : seals[at] === hash
              ? undefined
              : 'changed'
      if (kind) {
        const { message } = misfit(kind === 'missing' ? expected : number, kind)
        this.#refused = say`${message} So these entries cannot be kept as a book beside this one either.`
        return
      }
      this.#hashes.push(hash)
      this.#first ||= entry.at
      this.#newest = entry
    }
  }

  /** What can be taken in; nothing where there were no entries. `said`: what the file says of the book. */
  async end(said: BookBeside | undefined): Promise<OtherPlanned | undefined> {
    const newest = this.#newest
    if (!newest && !this.#refused) return undefined
    const count = this.#hashes.length
    const short = said !== undefined && !this.#refused && (said.count !== count || said.hash !== newest?.hash)
    const planned: OtherPlanned = {
      of: said?.key ?? '',
      name: said?.name ?? '',
      book: newest?.book ?? '',
      count,
      hash: newest?.hash ?? '',
      first: this.#first,
      last: newest?.at ?? '',
      into: '',
      add: count,
      same: 0,
      shared: 0,
      refused: short
        ? say`The file has ${count} entries of this book, and says that there are ${said.count}: they are not taken in.`
        : this.#refused,
      differs: '',
      canBegin: false,
    }
    if (!planned.refused) await this.#compare(planned)
    return planned
  }

  async #compare(planned: OtherPlanned): Promise<void> {
    planned.shared = (await commonPart('', this.#hashes)).common
    const known = await Promise.all(
      (await allOthers()).map(async (other) => {
        const { common, here } = await commonPart(other.key, this.#hashes)
        return { other, common, here }
      }),
    )
    const { count, book } = planned
    const same = known.find(({ other, common, here }) => {
      if (this.#hashes[other.count - 1] === other.hash) return true
      const goesOn = common > 0 || (other.book !== '' && other.book === book)
      // Of what was lost here, the file may have a part.
      return goesOn && common === Math.min(here, count) && count < other.count
    })
    if (same) {
      const { key, name } = same.other
      Object.assign(planned, { into: key, name, add: count - same.common, same: same.common })
      return
    }
    // A chain that has the same beginning, or the same name under its seals, and goes on otherwise.
    const other = known.find((one) => one.common > 0 || (one.other.book !== '' && one.other.book === book))
    if (!other) return
    const at = other.common + 1
    const mine = await keptEntry(at, other.other.key)
    const { takenIn, name } = other.other
    const file = takenIn.at(-1)?.file || say`a file`
    planned.differs = say`Entry ${at} of the file is not entry ${at} of ${name}, which was taken in from ${file}. Added there: ${mine?.at ?? say`none`}. One of the two was rewritten, or the book was continued in two places. Ask whose book it is before you keep both.`
  }
}

/** So many are hashed at a time. */
const batch = 64

interface Waiting {
  entry: Outline
  seal: string | Promise<string>
}

/** The chains of books that the file's book keeps beside it. */
export class BesideInFile {
  #books = new Map<string, { said: BookBeside; chain: ChainInFile; waiting: Waiting[] }>()
  /** Entries of books that a damaged file does not name. */
  #nameless = 0

  book(said: BookBeside): void {
    this.#books.set(said.key, { said, chain: new ChainInFile(), waiting: [] })
  }

  async take(key: string, entry: Outline, seal: string | Promise<string>): Promise<void> {
    const book = this.#books.get(key)
    if (!book) {
      this.#nameless++
      return
    }
    book.waiting.push({ entry, seal })
    if (book.waiting.length === batch) await this.#look(key)
  }

  async #look(key: string): Promise<void> {
    const book = this.#books.get(key)
    const some = book?.waiting.splice(0) ?? []
    const seals = await Promise.all(some.map(({ seal }) => seal))
    book?.chain.take(
      some.map(({ entry }) => entry),
      seals,
    )
  }

  /** How many entries are of books that the file does not name: its line about them is damaged. */
  get nameless(): number {
    return this.#nameless
  }

  async end(): Promise<OtherPlanned[]> {
    const planned: OtherPlanned[] = []
    for (const [key, { said, chain }] of this.#books) {
      await this.#look(key)
      const one = await chain.end(said)
      if (one) planned.push(one)
    }
    return planned
  }
}

/** A book that is to be kept beside, and what it is to be called. */
export type Beside = { planned: OtherPlanned; name: string }

/** Adds the entries of a book beside that are not here yet, a batch at a time; then its copy. */
export class BesideWriter {
  #other: OtherBook
  /** Entries up to it are here. */
  #here: number
  readonly #from: { file: string; at: string }
  readonly #added: (entries: number) => void
  #waiting: Entry[] = []

  private constructor(
    other: OtherBook,
    here: number,
    from: { file: string; at: string },
    added: (entries: number) => void,
  ) {
    this.#other = other
    this.#here = here
    this.#from = from
    this.#added = added
  }

  /** `back`: whether a book that the person had put away comes back. */
  static async begin(
    { planned, name, back = true }: Beside & { back?: boolean },
    from: { file: string; at: string },
    added: (entries: number) => void,
  ): Promise<BesideWriter> {
    const there = (await allOthers()).find(({ key }) => key === planned.into)
    const {
      left: _,
      putAway,
      ...known
    } = there ?? {
      key: crypto.randomUUID(),
      name: '',
      book: planned.book,
      count: 0,
      hash: '',
      shared: planned.shared,
      takenIn: [],
    }
    const called = name.trim().slice(0, 200) || from.file.slice(0, 200) || say`another book`
    const away = back || putAway === undefined ? {} : { putAway }
    return new BesideWriter({ ...known, ...away, name: called, shared: planned.shared }, planned.same, from, added)
  }

  async take(entry: Entry): Promise<void> {
    if (entry.number <= this.#here) return
    this.#waiting.push(entry)
    if (this.#waiting.length === 1024) await this.#write()
  }

  async #write(): Promise<void> {
    const some = this.#waiting
    this.#waiting = []
    const [first, last] = [some[0], some.at(-1)]
    if (!first || !last) return
    await putBeside(this.#other.key, some)
    const { takenIn } = withTakenIn(
      { book: '', takenIn: this.#other.takenIn },
      { from: first.number, to: last.number, ...this.#from },
    )
    const newest = { count: last.number, hash: last.hash, book: last.book ?? '' }
    this.#other = { ...this.#other, ...(last.number > this.#other.count && newest), takenIn }
    await saveOther(this.#other)
    this.#added(some.length)
  }

  async end(): Promise<void> {
    await this.#write()
    if (this.#other.count === 0) return
    // A new name, or one that was put away and is taken in again.
    await saveOther(this.#other)
    await copyBeside(this.#other)
    announce({ what: 'entries' })
  }
}
