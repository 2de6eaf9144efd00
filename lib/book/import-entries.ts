/** Which entries of a file the book can add: each is held to its own seal and to the entries beside it. */
import { misfit, type Misfit } from './chain.ts'
import { database, type Head } from './database.ts'
import type { ChainInFile } from './import-others.ts'
import type { Outline } from './outlines.ts'
import { say } from '../words/say.ts'

/** How many; `refused`: why the entries cannot be joined to the book's chain; then none is added. */
export interface EntriesPlanned {
  add: number
  same: number
  refused: string
  /** Whether that is so because the file's own chain does not fit. */
  broken?: boolean
}

/** How the entries of a file join the book's. */
export interface Joining {
  /** The newest entry of the book when it was planned. */
  after: number
  /** Numbers before it that the book lacks and the file has. */
  holes: number[]
  /** Stretches of numbers that neither the book nor the file has. */
  gaps: [from: number, to: number][]
}

/** So many are hashed at a time. */
const batch = 64

/**
 * Takes the entries of a file in their order. `gapsAllowed`: the file is read although parts of it are damaged; `chain`: is
 * shown each entry with its seal too, which is computed once.
 */
export class EntryPlanner {
  readonly #gapsAllowed: boolean
  readonly #newest: Head | undefined
  readonly #own: ReadonlySet<number>
  #waiting: { entry: Outline; seal: string | Promise<string> }[] = []
  /** The last one that is in the book or will be added. */
  #last: Head = { number: 0, hash: '' }
  #planned: EntriesPlanned = { add: 0, same: 0, refused: '' }
  readonly #joining: Joining
  readonly #chain: ChainInFile

  constructor(gapsAllowed: boolean, newest: Head | undefined, own: readonly number[], chain: ChainInFile) {
    this.#chain = chain
    this.#gapsAllowed = gapsAllowed
    this.#newest = newest
    this.#own = new Set(own)
    this.#joining = { after: newest?.number ?? 0, holes: [], gaps: [] }
  }

  static async begin(gapsAllowed: boolean, chain: ChainInFile): Promise<EntryPlanner> {
    const db = await database()
    const [newest, own] = await Promise.all([
      db.transaction('entries').store.openCursor(null, 'prev'),
      db.getAllKeys('entries'),
    ])
    return new EntryPlanner(gapsAllowed, newest?.value, own, chain)
  }

  /** `seal`: what the entry's hash should be. */
  async take(entry: Outline, seal: string | Promise<string>): Promise<void> {
    this.#waiting.push({ entry, seal })
    if (this.#waiting.length === batch) await this.#look()
  }

  async end(): Promise<{ entries: EntriesPlanned; joining: Joining }> {
    await this.#look()
    // A book and a file that share no entry and do not join may be two books.
    const { add, same, refused } = this.#planned
    if (!refused && this.#newest && add > 0 && same === 0 && this.#joining.gaps.length > 0)
      this.#refuse(this.#twoBooks(this.#last.number))
    return { entries: this.#planned, joining: this.#joining }
  }

  async #look(): Promise<void> {
    const waiting = this.#waiting
    this.#waiting = []
    if (waiting.length === 0) return
    const some = waiting.map(({ entry }) => entry)
    const numbers = some.map(({ number }) => number)
    const [first, last] = [Math.min(...numbers), Math.max(...numbers)]
    const range = IDBKeyRange.bound(first - 1, last + 1)
    const near = first <= this.#joining.after + 1 ? await (await database()).getAll('entries', range) : []
    const own = new Map(near.map((entry) => [entry.number, entry]))
    const seals = await Promise.all(waiting.map(({ seal }) => seal))
    this.#chain.take(some, seals)
    for (const [at, entry] of some.entries()) {
      if (this.#planned.refused) return
      this.#one(entry, seals[at]!, own)
    }
  }

  #one(entry: Outline, sealed: string, own: ReadonlyMap<number, Outline>): void {
    const { number, hash } = entry
    if (this.#own.has(number)) {
      this.#planned.same++
      if (own.get(number)?.hash !== hash) return this.#refuse(this.#twoBooks(number))
      this.#last = { number, hash }
      return
    }
    const before = own.get(number - 1) ?? (this.#last.number === number - 1 ? this.#last : undefined)
    if (number <= this.#last.number) return this.#misfit(number, 'out of place')
    if (!before && number > 1) {
      const { after } = this.#joining
      const from = Math.max(this.#last.number, number > after ? after : 0) + 1
      if (!this.#gapsAllowed) return this.#misfit(from, 'missing')
      this.#joining.gaps.push([from, number - 1])
    }
    if (sealed !== hash) return this.#misfit(number, 'changed')
    if ((before || number === 1) && entry.previous !== (before?.hash ?? '')) return this.#misfit(number, 'out of place')
    const next = own.get(number + 1)
    if (next && next.previous !== hash) return this.#refuse(this.#twoBooks(number))
    this.#planned.add++
    if (number <= this.#joining.after) this.#joining.holes.push(number)
    this.#last = { number, hash }
  }

  #twoBooks = (number: number): string =>
    say`The file's entry ${number} is not this book's entry ${number}: they are two books. The entries stay in the file; the rest can be taken in.`

  #misfit(number: number, kind: Misfit): void {
    const { message } = misfit(number, kind)
    const { after } = this.#joining
    this.#refuse(
      after === 0
        ? say`${message} So the entries of this file cannot begin this book; the rest can be taken in.`
        : say`${message} So the entries of this file cannot follow entry ${after} of this book; the rest can be taken in.`,
      true,
    )
  }

  #refuse(refused: string, broken = false): void {
    this.#planned = { add: 0, same: 0, refused, ...(broken && { broken }) }
    Object.assign(this.#joining, { holes: [], gaps: [] })
  }
}
