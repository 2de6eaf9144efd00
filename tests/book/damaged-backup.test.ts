/** A backup of which a part is damaged gives back every record before and after it. */
import { beforeAll, describe, expect, test } from 'vitest'
import { encrypted, openBackup } from '../../lib/book/backup.ts'
import { seal } from '../../lib/book/chain.ts'
import { database } from '../../lib/book/database.ts'
import { countEntries, entriesForwards, verify } from '../../lib/book/entries.ts'
import { applyImport, planImport } from '../../lib/book/import.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { getJob } from '../../lib/book/jobs.ts'
import { fileParts, openBookFile } from '../../lib/book/json.ts'
import type { Readable } from '../../lib/book/lines.ts'
import { origins } from '../../lib/book/origin.ts'
import { listRows } from '../../lib/book/search.ts'
import { generator } from '../random.ts'
import { fakeJob } from './fake.ts'
import './fresh.ts'
import { manyEntry } from './many.ts'

const passphrase = 'seven grey herons wade'
/** Enough for several pieces of a backup. */
const size = 200

let file: string
let backup: string

async function text(parts: AsyncIterable<string>): Promise<string> {
  let whole = ''
  for await (const part of parts) whole += part
  return whole
}

/** Entries of some 24 kB each: a long note is kept, and is no word of the index. */
async function* written(): AsyncGenerator<Entry> {
  let previous = ''
  for (let number = 1; number <= size; number++) {
    const entry = manyEntry(number, 2)
    const lines = entry.lines.map((line) => ({ ...line, note: `${number} `.repeat(3500).slice(0, 12_000) }))
    const unsealed = { ...entry, lines, previous }
    previous = await seal(unsealed)
    yield { ...unsealed, hash: previous }
  }
}

beforeAll(async () => {
  file = await text(fileParts({ jobs: [fakeJob()] }, written()))
  backup = await text(encrypted(new Blob([file]).stream().pipeThrough(new TextDecoderStream()), passphrase))
}, 60_000)

const numbers = async () => (await Array.fromAsync(entriesForwards())).map(({ number }) => number)

const takenInRanges = async () => (await origins()).takenIn.map(({ from, to }) => [from, to])

async function takeIn(readable: Readable) {
  const source = await openBookFile(readable, { passOver: true })
  const plan = await planImport(source)
  await applyImport(plan, source)
  return plan
}

const opened = (lines: readonly string[]) => openBackup(new Blob([lines.join('\n')]), passphrase, { passOver: true })
const lines = () => backup.split('\n')
const turnedLine = (line: string) => `${line.slice(0, 5000)}${line[5000] === 'A' ? 'B' : 'A'}${line.slice(5001)}`

describe('a backup', () => {
  test('that is whole says so when it is read in parts', async () => {
    const plan = await takeIn(await opened(lines()))
    expect(plan).toMatchObject({ damaged: 0, entries: { add: size }, joining: { gaps: [] } })
    expect(lines().length, 'head, pieces, end').toBeGreaterThan(5)
    expect(await verify()).toMatchObject({ ok: true, count: size })
  })

  test('with a damaged piece is refused as a whole, by its line', async () => {
    const all = lines().with(3, turnedLine(lines()[3]!))
    const strict = await openBackup(new Blob([all.join('\n')]), passphrase)
    await expect(planImport(await openBookFile(strict))).rejects.toThrow(/^Line 4 of the file/)
  })

  test('with a damaged piece gives back all records before and after it', async () => {
    const plan = await takeIn(await opened(lines().with(3, turnedLine(lines()[3]!))))
    const [gap, ...more] = plan.joining.gaps
    expect(more).toEqual([])
    const [from, to] = gap!
    // A piece is 1 MiB (backup.ts); an entry of this size has its whole line in one piece or over one border.
    const inPiece = new Set<number>()
    const bytes = new TextEncoder().encode(file)
    const piece = new TextDecoder().decode(bytes.subarray(2 * (1 << 20), 3 * (1 << 20)))
    for (const [, number] of piece.matchAll(/"number":(\d+),"page"/g)) inPiece.add(Number(number))
    expect(to - from + 1).toBeLessThanOrEqual(inPiece.size + 2)
    expect(await numbers()).toEqual(
      Array.from({ length: size }, (_, at) => at + 1).filter((number) => number < from || number > to),
    )
    const takenIn = [
      [1, from - 1],
      [to + 1, size],
    ]
    expect(await takenInRanges(), 'entries from a file bear that sign').toEqual(takenIn)
    expect(await getJob('job-1')).toBeDefined()
    expect(await verify()).toMatchObject({ ok: false, entry: from, misfit: 'missing' })
    expect((await listRows({ text: `apply/${size}/part-c` })).map(({ number }) => number)).toEqual([size])

    // Another backup fills the gap.
    const source = await openBookFile(new Blob([file]))
    const second = await planImport(source)
    expect(second.entries).toMatchObject({ add: to - from + 1, same: size - (to - from + 1), refused: '' })
    await applyImport(second, source)
    expect(await verify()).toMatchObject({ ok: true, count: size })
    expect(await takenInRanges()).toEqual([...takenIn, [from, to]])
  })

  test.each([
    ['cut off in the middle of a piece', (all: string[]) => [...all.slice(0, 4), all[4]!.slice(0, 9000)], 3],
    ['without one of its lines', (all: string[]) => all.toSpliced(3, 1), 1],
    ['with a line broken in two', (all: string[]) => all.toSpliced(3, 1, all[3]!.slice(0, 700), all[3]!.slice(700)), 1],
    ['with a line too many', (all: string[]) => all.toSpliced(3, 0, 'AAAA'), 0],
  ])('%s gives back the rest', async (_, spoil, pieces) => {
    const plan = await takeIn(await opened(spoil(lines())))
    expect(plan.entries.refused).toBe('')
    const inAll = lines().length - 2
    expect(plan.entries.add).toBeGreaterThanOrEqual(Math.floor((size * (inAll - pieces)) / inAll) - 2 - pieces * 2)
    expect(await countEntries()).toBeGreaterThan(0)
  })

  test('opens with no other passphrase, and with a damaged first piece', async () => {
    const other = openBackup(new Blob([backup]), 'seven grey herons wake', { passOver: true })
    await expect(other).rejects.toThrow('The passphrase does not open this file')
    const plan = await takeIn(await opened(lines().with(1, turnedLine(lines()[1]!))))
    expect(plan.joining.gaps[0]?.[0]).toBe(1)
    expect(plan.entries.add).toBeGreaterThan(size / 2)
  })

  test('damaged at random places never gives a record that was not written', async () => {
    const random = generator(31)
    const hashes = new Map<number, string>()
    for await (const { number, hash } of written()) hashes.set(number, hash)
    const bytes = new TextEncoder().encode(file)
    const spoilt = Uint8Array.from(bytes)
    for (let time = 0; time < 40; time++) spoilt[Math.floor(random() * bytes.length)]! ^= 1 << Math.floor(random() * 8)
    const plan = await takeIn(new Blob([spoilt]))
    expect(plan.damaged).toBeGreaterThan(20)
    expect(plan.damaged).toBeLessThanOrEqual(42)
    let count = 0
    for await (const entry of entriesForwards()) {
      expect(entry.hash).toBe(hashes.get(entry.number))
      count++
    }
    expect(count).toBeGreaterThanOrEqual(size - 42)
  })
})

test('the plan reads a file once, and says from the beginning how far it is', async () => {
  let read = 0
  const shares: number[] = []
  const blob = new Blob([file])
  const counting: Readable = {
    size: blob.size,
    stream: () =>
      blob.stream().pipeThrough(
        new TransformStream({
          transform(chunk: Uint8Array<ArrayBuffer>, controller) {
            read += chunk.length
            // Browsers give a file in pieces; Node gives a text as one.
            for (let at = 0; at < chunk.length; at += 65_536) controller.enqueue(chunk.subarray(at, at + 65_536))
          },
        }),
      ),
  }
  const source = await openBookFile(counting)
  const opening = read
  const plan = await planImport(source, (share) => shares.push(share))
  expect(read - opening).toBe(blob.size)
  expect(shares[0]).toBeLessThan(0.1)
  expect(shares.at(-1)).toBe(1)
  const added: number[] = []
  await applyImport(plan, source, '', (entries) => added.push(entries))
  expect(added.at(-1)).toBe(size)
  expect(await (await database()).count('entries')).toBe(size)
})
