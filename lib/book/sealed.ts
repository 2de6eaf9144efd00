/**
 * A file of records, each on a line of its own and sealed by itself, so that a change is not only seen but found. The
 * whole is a JSON array. A record is canonical JSON (RFC 8785) with its place `n` and its `seal`, the SHA-256 of the
 * record without it; the last one counts them and holds a hash over all seals.
 */
import { canonical } from './canonical.ts'
import { refuse } from './error.ts'
import { linesOf, type Readable } from './lines.ts'
import { parseJson } from './parse-json.ts'
import { sha256 } from './sha256.ts'
import { say } from '../words/say.ts'

/** One record: what kind it is of, and what it holds. */
export type Item = { kind: string; value: unknown }

/** So many records are hashed at a time. */
const batch = 32

/** A hash over seals, taken together now and then, so that a long file holds few of them. */
class Tally {
  #seals: string[] = []
  #sum = ''

  async add(seals: readonly string[]): Promise<void> {
    for (const seal of seals) {
      this.#seals.push(seal)
      if (this.#seals.length === 1024) await this.#take()
    }
  }

  async #take(): Promise<void> {
    this.#sum = await sha256(this.#sum + this.#seals.join(''))
    this.#seals = []
  }

  async sum(): Promise<string> {
    await this.#take()
    return this.#sum
  }
}

async function sealed({ kind, value }: Item, n: number): Promise<{ line: string; seal: string }> {
  const text = canonical({ [kind]: value, n })
  if (text === undefined) throw new TypeError(`${kind} cannot be written as JSON.`)
  const seal = await sha256(text)
  return { line: `${text.slice(0, -1)},"seal":"${seal}"}`, seal }
}

/** Yields the file piece by piece. */
export async function* sealedFile(items: Iterable<Item> | AsyncIterable<Item>): AsyncGenerator<string> {
  const tally = new Tally()
  let written = 0
  let some: Item[] = []
  async function* flush() {
    const lines = await Promise.all(some.map((item, at) => sealed(item, written + at + 1)))
    await tally.add(lines.map(({ seal }) => seal))
    written += lines.length
    some = []
    if (lines.length > 0) yield lines.map(({ line }) => `${line},\n`).join('')
  }
  yield '[\n'
  for await (const item of items) {
    some.push(item)
    if (some.length === batch) yield* flush()
  }
  yield* flush()
  const end = { count: written, sum: await tally.sum() }
  yield `${(await sealed({ kind: 'end', value: end }, written + 1)).line}\n]\n`
}

const whatToDo = say`Nothing was taken in. Get the file again from where it came from.`

const damaged = (line: number, what: string) =>
  refuse(`line ${line}`, say`Line ${line} of the file${what}. ${whatToDo}`)

/** What is not as it was written in a file that is read all the same. */
export interface Damage {
  /** The first lines, at most a hundred. */
  lines: number[]
  /** How many lines. */
  count: number
}

export const noDamage = (): Damage => ({ lines: [], count: 0 })

/**
 * Reads such a file and passes over what is not as it was written: each record is sealed by itself, with its place.
 * @param damage what was passed over is noted here
 */
export async function* readWholeRecords(
  file: Pick<Readable, 'stream'>,
  kinds: readonly string[],
  damage: Damage,
): AsyncGenerator<Item & { line: number }> {
  let newest = 0
  for await (const { bytes, line, read } of linesAhead(file)) {
    const text = new TextDecoder().decode(bytes)
    if (text === '[' || text === ']') continue
    const record = await read
    // A record that stands here a second time, or was moved, was not written here.
    if (record && record.n > newest && [...kinds, 'end'].includes(record.item.kind)) {
      newest = record.n
      if (record.item.kind !== 'end') yield { ...record.item, line }
      continue
    }
    damage.count++
    if (damage.lines.length < 100) damage.lines.push(line)
  }
}

/** So many lines are read ahead, so that hashing one does not wait for another; and so many bytes at most. */
const [ahead, aheadBytes] = [32, 4_000_000]

interface Ahead {
  bytes: Uint8Array<ArrayBuffer>
  line: number
  read: Promise<Quick | undefined>
}

async function* linesAhead(file: Pick<Readable, 'stream'>): AsyncGenerator<Ahead> {
  let some: Ahead[] = []
  let line = 0
  let held = 0
  for await (const bytes of linesOf(file)) {
    some.push({ bytes, line: ++line, read: quick(bytes).catch(() => undefined) })
    held += bytes.length
    if (some.length < ahead && held < aheadBytes) continue
    yield* some
    some = []
    held = 0
  }
  yield* some
}

interface Quick {
  item: Item
  n: number
  seal: string
}

const sealStart = ',"seal":"'
const sealLength = sealStart.length + 64 + '"}'.length

const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/**
 * SHA-256 of so many bytes and a closing bracket after them, which is put there while they are read: Web Cryptography has
 * copied them when the call returns.
 */
function closedSum(bytes: Uint8Array<ArrayBuffer>, length: number): Promise<string> {
  const there = bytes[length]!
  bytes[length] = 0x7d
  const sum = sha256(bytes.subarray(0, length + 1))
  bytes[length] = there
  return sum
}

/** A record whose seal fits the very text before it, or nothing: then `unsealed` says what is wrong. */
async function quick(bytes: Uint8Array<ArrayBuffer>): Promise<Quick | undefined> {
  const text = decoder.decode(bytes)
  const whole = text.endsWith(',') ? text.slice(0, -1) : text
  const tail = whole.slice(-sealLength)
  const seal = tail.slice(sealStart.length, -2)
  if (!tail.startsWith(sealStart) || !tail.endsWith('"}')) return undefined
  // The tail is as many bytes as characters: what is not, is no seal that fits.
  if ((await closedSum(bytes, bytes.length - (text.length - whole.length) - sealLength)) !== seal) return undefined
  const { n, seal: _, ...rest } = parseJson(whole) as Record<string, unknown>
  const [kind, ...more] = Object.keys(rest)
  if (kind === undefined || more.length > 0 || typeof n !== 'number') return undefined
  // The last record alone has no comma.
  if ((kind === 'end') === text.endsWith(',')) return undefined
  return { item: { kind, value: rest[kind] }, n, seal }
}

/**
 * Reads such a file, record by record.
 * @throws BookError that names the first line which is not as it was written, or the place where lines are missing.
 */
export async function* readSealed(
  file: Pick<Readable, 'stream'>,
  kinds: readonly string[],
): AsyncGenerator<Item & { line: number; seal: string }> {
  const tally = new Tally()
  let line = 0
  let n = 0
  let ended = false
  let closed = false
  for await (const { bytes, read } of linesAhead(file)) {
    line++
    let text: string
    try {
      text = decoder.decode(bytes)
    } catch {
      throw damaged(line, say` is not text`)
    }
    if (line === 1) {
      if (text !== '[') throw damaged(1, say` is not the beginning of a book file`)
      continue
    }
    if (closed) throw damaged(line, say` stands after the end`)
    if (ended) {
      if (text !== ']') throw damaged(line, say` is not the end that was written`)
      closed = true
      continue
    }
    const fits = await read
    const known = fits && fits.n === n + 1 && [...kinds, 'end'].includes(fits.item.kind)
    const { item, seal } = known ? fits : await unsealed(text, line, n + 1, [...kinds, 'end'])
    n++
    if (item.kind === 'end') {
      const end = { count: n - 1, sum: await tally.sum() }
      if (canonical(item.value) !== canonical(end)) {
        throw damaged(line, say` counts other records than stand before it: some were exchanged`)
      }
      ended = true
      continue
    }
    await tally.add([seal])
    yield { ...item, line, seal }
  }
  if (!closed) throw damaged(line + 1, say` and what comes after it are missing: the file was cut off`)
}

async function unsealed(text: string, line: number, n: number, kinds: readonly string[]) {
  let record: unknown
  try {
    record = parseJson(text.endsWith(',') ? text.slice(0, -1) : text)
  } catch {
    throw damaged(line, say` is not what was written: it is not JSON`)
  }
  const kind = kinds.find((one) => typeof record === 'object' && record !== null && Object.hasOwn(record, one))
  if (kind === undefined) throw damaged(line, say` holds nothing that a book writes`)
  const { [kind]: value, n: place, seal } = record as Record<string, unknown>
  const item: Item = { kind, value }
  const named = ` (${nameOf(item)})`
  if (typeof place === 'number' && place !== n && typeof seal === 'string') {
    const own = await reseal(item, place, line, named)
    if (own.seal === seal)
      throw damaged(
        line,
        place > n
          ? say`${named} is out of place: record ${n} is missing before it`
          : say`${named} is out of place: it was moved here`,
      )
  }
  const expected = await reseal(item, n, line, named)
  if (text !== (kind === 'end' ? expected.line : `${expected.line},`))
    throw damaged(line, say`${named} is not what was written: its seal does not fit`)
  return { item, seal: expected.seal }
}

async function reseal(item: Item, n: number, line: number, named: string) {
  try {
    return await sealed(item, n)
  } catch {
    throw damaged(line, say`${named} is nested too deeply, or holds what JSON cannot`)
  }
}

/** A record in words, as far as it can be told. */
function nameOf({ kind, value }: Item): string {
  if (typeof value !== 'object' || value === null) return kind
  const { number, name, id } = value as Record<string, unknown>
  const told = [number, name, id].find((one) => typeof one === 'number' || typeof one === 'string')
  return told === undefined ? kind : `${kind} ${String(told).slice(0, 60)}`
}
