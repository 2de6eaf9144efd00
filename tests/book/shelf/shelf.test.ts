/** A shelf: segments of books in a folder that something else carries. What does not fit is told and never taken in. */
import { ownStorage } from '../own-storage.ts'
import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { addSealed, countEntries, entriesForwards, verify } from '../../../lib/book/entries.ts'
import { origins } from '../../../lib/book/origin.ts'
import { listOthers, putAwayOther, saveOther } from '../../../lib/book/others.ts'
import type { Entry } from '../../../lib/book/schema.ts'
import { seal } from '../../../lib/book/chain.ts'
import { sha256 } from '../../../lib/book/sha256.ts'
import { filesOf, pickFolder } from '../../../lib/book/shelf/folder.ts'
import { saveShelf } from '../../../lib/book/shelf/record.ts'
import { newKeys, readSegmentName, segmentName, writeSegment } from '../../../lib/book/shelf/segment.ts'
import { takeInShelf, type ShelfFile } from '../../../lib/book/shelf/take-in.ts'
import { missingSegments, ownDiffers } from '../../../lib/book/shelf/write.ts'
import { verifyBook } from '../../../lib/book/verify.ts'
import { generator } from '../../random.ts'
import '../fresh.ts'
import { manyEntries } from '../many.ts'

const book = '6f1c2a34-0000-4000-8000-00000000000a'
const size = 60
let keys: CryptoKeyPair
let chain: Entry[]

beforeAll(async () => {
  keys = await newKeys()
  chain = (await Array.fromAsync(manyEntries(size, 1))).flat()
})
beforeEach(() => ownStorage.clear())

const whole = async (parts: AsyncIterable<string>) => (await Array.fromAsync(parts)).join('')

/** The segment of some entries, as its book writes it. */
async function segment(entries: Entry[], by = keys): Promise<{ name: string; text: string }> {
  const [first, last] = [entries[0]!, entries.at(-1)!]
  const name = segmentName({ book, first: first.number, last: last.number, hash: last.hash })
  return { name, text: await whole(writeSegment({ book, name: 'Field laptop', keys: by }, entries)) }
}

const file = ({ name, text }: { name: string; text: string | Uint8Array<ArrayBuffer> }): ShelfFile => ({
  name,
  open: async () => new Blob([text]),
})

const takeIn = (...files: { name: string; text: string | Uint8Array<ArrayBuffer> }[]) => takeInShelf(files.map(file))

/** The same chain from an entry on, with other content: what a book that was rewritten has. */
async function rewritten(from: number): Promise<Entry[]> {
  const all: Entry[] = []
  for (const entry of chain) {
    const { hash: _, ...rest } = entry
    const changed = { ...rest, engine: entry.number < from ? rest.engine : '0.2.0', previous: all.at(-1)?.hash ?? '' }
    all.push({ ...changed, hash: await seal(changed as Entry) } as Entry)
  }
  return all
}

describe('what others wrote', () => {
  test('is taken in once, in any order, and read beside one’s own book', async () => {
    const [a, b, c] = [
      await segment(chain.slice(0, 20)),
      await segment(chain.slice(20, 45)),
      await segment(chain.slice(45)),
    ]
    expect(await takeIn(c, a, b)).toEqual({ added: [{ name: 'Field laptop', entries: size }], told: [] })
    const [other, ...more] = await listOthers()
    expect(more).toEqual([])
    expect(other).toMatchObject({ name: 'Field laptop', onShelf: { book }, count: size, hash: chain.at(-1)!.hash })
    expect((await verifyBook(true, undefined, other)).chain).toMatchObject({ ok: true, count: size })
    expect(await Array.fromAsync(entriesForwards(0, other!.key))).toEqual(chain)
    expect(await takeIn(a, b, c)).toEqual({ added: [], told: [] })
    expect(await countEntries()).toBe(0)
  })

  test('goes on where it ended; segments that overlap give no entry twice', async () => {
    await takeIn(await segment(chain.slice(0, 30)))
    const { added } = await takeIn(await segment(chain.slice(0, 30)), await segment(chain.slice(20, 50)))
    expect(added).toEqual([{ name: 'Field laptop', entries: 20 }])
    expect((await listOthers())[0]).toMatchObject({ count: 50 })
  })

  test('waits for what is missing, which is told by number', async () => {
    const { added, told } = await takeIn(await segment(chain.slice(0, 10)), await segment(chain.slice(15, 30)))
    expect(added).toEqual([{ name: 'Field laptop', entries: 10 }])
    expect(told).toEqual([expect.stringContaining('Entries 11 to 15 of Field laptop are not here yet')])
    expect((await takeIn(await segment(chain.slice(10, 15)), await segment(chain.slice(15, 30)))).told).toEqual([])
    expect((await listOthers())[0]).toMatchObject({ count: 30 })
  })

  test('that was rewritten from the middle is told, and what was taken in stays', async () => {
    await takeIn(await segment(chain.slice(0, 40)))
    const other = await rewritten(25)
    const { added, told } = await takeIn(await segment(other.slice(0, 50)))
    expect(added).toEqual([])
    expect(told).toEqual([expect.stringMatching(/^Entry 40 of Field laptop on the shelf is not the one/)])
    const same = await takeIn(await segment(other.slice(0, 40)))
    expect(same.told).toEqual([expect.stringMatching(/^Entry 40 of Field laptop on the shelf is not the one/)])
    expect(await Array.fromAsync(entriesForwards(0, (await listOthers())[0]!.key))).toEqual(chain.slice(0, 40))
  })

  test('in two ways is told, and neither is taken in', async () => {
    const other = await rewritten(5)
    const { added, told } = await takeIn(await segment(chain.slice(0, 40)), await segment(other.slice(0, 30)))
    expect(added).toEqual([])
    expect(told).toEqual([expect.stringContaining('go on otherwise')])
  })

  test('with another key than before is told, however well it fits', async () => {
    await takeIn(await segment(chain.slice(0, 20)))
    const { added, told } = await takeIn(await segment(chain.slice(20, 30), await newKeys()))
    expect(added).toEqual([])
    expect(told[0]).toContain('signed with another key')
  })

  test('in a longer segment that another key signed is told at first sight, and nothing is taken in', async () => {
    const forged = await rewritten(1)
    const strange = await newKeys()
    for (const more of [chain, forged]) {
      const { added, told } = await takeIn(
        await segment(chain.slice(0, 20)),
        await segment(chain.slice(20, 30)),
        await segment(more.slice(0, 60), strange),
      )
      expect(added).toEqual([])
      expect(told).toEqual([expect.stringContaining('two different keys')])
    }
    expect(await listOthers()).toEqual([])
  })

  test('is not held to be a book that came out of a file because of a file’s name', async () => {
    await takeIn(await segment(chain))
    const { onShelf: _, ...fromFile } = (await listOthers())[0]!
    await saveOther({ ...fromFile, book: '' })
    const strange = { book: 'ffffffff-0000-4000-8000-000000000000', first: 1, last: size, hash: chain.at(-1)!.hash }
    const { told } = await takeIn(
      { name: segmentName(strange), text: 'nothing of it' },
      { name: segmentName({ ...strange, first: size + 11, last: size + 20 }), text: 'nothing of it' },
    )
    expect(told.join()).toContain('of ffffffff')
    expect(told.join()).not.toContain('Field laptop')
  })

  test('in a file that cannot be opened is told, and the rest is taken in', async () => {
    const [a, b] = [await segment(chain.slice(0, 20)), await segment(chain.slice(20, 45))]
    const locked = { name: b.name, open: () => Promise.reject(new DOMException('', 'NotReadableError')) }
    const { added, told } = await takeInShelf([file(a), locked])
    expect(added).toEqual([{ name: 'Field laptop', entries: 20 }])
    expect(told).toContainEqual(expect.stringContaining(`${b.name}: it cannot be opened`))
    expect((await takeIn(a, b)).told).toEqual([])
  })

  test('and is the same as one’s own book at its beginning is known as shared, segment by segment', async () => {
    await addSealed(chain.slice(0, 25))
    await takeIn(await segment(chain.slice(0, 20)))
    expect((await listOthers())[0]).toMatchObject({ count: 20, shared: 20 })
    await takeIn(await segment(chain.slice(20, 40)))
    expect((await listOthers())[0]).toMatchObject({ count: 40, shared: 25 })
    await takeIn(await segment(chain.slice(40)))
    expect((await listOthers())[0]).toMatchObject({ count: size, shared: 25 })
  })

  test('up to a stop is said by number', async () => {
    const stop = new AbortController()
    const [a, b] = [await segment(chain.slice(0, 20)), await segment(chain.slice(20, 45))]
    const { added } = await takeInShelf([a, b].map(file), () => stop.abort(), stop.signal)
    expect(added).toEqual([{ name: 'Field laptop', entries: 20 }])
    expect((await takeIn(a, b)).added).toEqual([{ name: 'Field laptop', entries: 25 }])
  })

  test('of a book that was put away goes on, and the book stays away', async () => {
    await takeIn(await segment(chain.slice(0, 20)))
    const { key } = (await listOthers())[0]!
    await putAwayOther(key, true)
    await takeIn(await segment(chain.slice(20, 45)))
    expect(await listOthers()).toEqual([])
    await putAwayOther(key, false)
    expect((await listOthers())[0]).toMatchObject({ key, count: 45 })
  })

  test('damaged in 120 ways is told and never taken in', async () => {
    const random = generator(20261130)
    const { name, text } = await segment(chain.slice(0, 12))
    const bytes = new TextEncoder().encode(text)
    for (let round = 0; round < 120; round++) {
      const at = Math.floor(random() * bytes.length)
      const changed = round % 3 === 0 ? bytes.slice(0, at) : bytes.slice()
      if (round % 3 === 1) changed[at]! ^= 1 << Math.floor(random() * 8)
      if (round % 3 === 2)
        changed.copyWithin(at, Math.floor(random() * bytes.length), Math.floor(random() * bytes.length))
      if (new TextDecoder().decode(changed) === text) continue
      const { added, told } = await takeIn({ name, text: changed })
      expect([round, added, told.length]).toEqual([round, [], 1])
    }
    expect(await listOthers()).toEqual([])
  })

  test('under another name, number or hash is told; other files of the folder are passed over', async () => {
    const one = await segment(chain.slice(0, 12))
    const names = [
      segmentName({ book: 'b2', first: 1, last: 12, hash: chain[11]!.hash }),
      segmentName({ book, first: 1, last: 13, hash: chain[11]!.hash }),
      segmentName({ book, first: 1, last: 12, hash: chain[10]!.hash }),
    ]
    for (const name of names) expect((await takeIn({ ...one, name })).told).toHaveLength(1)
    for (const name of [`.${one.name}.tmp`, one.name.replace('.json', ' (conflict).json'), 'notes.txt'])
      expect(await takeIn({ ...one, name })).toEqual({ added: [], told: [] })
    expect(readSegmentName(one.name)).toEqual({ book, first: 1, last: 12, hash: chain[11]!.hash.slice(0, 16) })
  })
})

/** What this book would write beside files of such names. */
const written = async (names: string[]) => {
  const record = await saveShelf('Office desktop')
  const parts: { name: string; text: string; entries: number }[] = []
  for await (const { name, entries, parts: of } of missingSegments(names, record))
    parts.push({ name, entries, text: await whole(of()) })
  return parts
}

const handle = (name: string, bytes: number) => ({
  kind: 'file',
  name,
  getFile: () => Promise.resolve(new Blob(['x'.repeat(bytes)])),
})
const folder = (...all: { name: string }[]) =>
  ({
    kind: 'directory',
    name: 'own',
    entries: () => all.map((one) => [one.name, one]),
  }) as unknown as FileSystemDirectoryHandle

const choose = async (name: string) => {
  vi.stubGlobal('showDirectoryPicker', () => Promise.reject(new DOMException('why', name)))
  try {
    return await pickFolder()
  } finally {
    vi.unstubAllGlobals()
  }
}

test('only the person’s own cancel of the choice of a folder is silent', async () => {
  expect(await choose('AbortError')).toBeUndefined()
  await expect(choose('SecurityError')).rejects.toThrow('why')
})

describe('what one’s own book writes', () => {
  test('is each entry once, and only what is new', async () => {
    await addSealed(chain.slice(0, 30))
    const first = await written([])
    expect(first.map(({ entries }) => entries)).toEqual([30])
    await addSealed(chain.slice(30))
    const second = await written(first.map(({ name }) => name))
    expect(second.map(({ entries }) => entries)).toEqual([30])
    expect(await written([...first, ...second].map(({ name }) => name))).toEqual([])
    expect(await verify()).toMatchObject({ ok: true, count: size })
    // It does not read its own back.
    expect(await takeIn(...first, ...second)).toEqual({ added: [], told: [] })
  })

  test('is written again where a segment in the middle is gone, and only that', async () => {
    await addSealed(chain)
    const { book: own } = await origins()
    const name = (first: number, last: number) => segmentName({ book: own, first, last, hash: chain[last - 1]!.hash })
    const there = [name(1, 10), name(8, 20), name(31, 40)]
    const again = await written(there)
    expect(again.map(({ name: one }) => one)).toEqual([name(21, 30), name(41, size)])
    expect(await written([...there, ...again.map(({ name: one }) => one)])).toEqual([])
    // The first one is gone.
    expect((await written([name(11, size)])).map(({ name: one }) => one)).toEqual([name(1, 10)])
  })

  test('is written where a page that ended left an empty file under the segment’s name', async () => {
    await addSealed(chain.slice(0, 30))
    const [one] = await written([])
    const names = async (bytes: number) =>
      (await filesOf(folder(folder(handle(one!.name, bytes)), handle('notes.txt', 9)))).map(({ name }) => name)
    expect(await names(0)).toEqual([])
    expect((await written(await names(0))).map(({ entries }) => entries)).toEqual([30])
    expect(await written(await names(5))).toEqual([])
  })

  test('is parted by the bytes of attachments too', async () => {
    const job = { id: 'job-1', name: '14 Tannery Row' }
    const all: Entry[] = []
    for (let number = 1; number <= 7; number++) {
      const photo = {
        name: `gauge ${number}.jpg`,
        type: 'image/jpeg',
        size: 19_000_000,
        sha256: await sha256(`${number}`),
      }
      const note = { kind: 'attachment' as const, id: `note-${number}`, job, text: '', file: photo }
      const unsealed = { ...note, number, at: chain[number]!.at, engine: '0.1.0', previous: all.at(-1)?.hash ?? '' }
      all.push({ ...unsealed, hash: await seal(unsealed) })
    }
    await addSealed(all)
    expect((await written([])).map(({ entries }) => entries)).toEqual([2, 2, 2, 1])
  })

  test('is refused where the shelf has more of it, or something else', async () => {
    const { book: own } = await origins()
    await addSealed(chain.slice(0, 20))
    const name = (last: number, hash: string) => segmentName({ book: own, first: 1, last, hash })
    expect(await ownDiffers([name(20, chain[19]!.hash)])).toBe('')
    expect(await ownDiffers([name(30, chain[29]!.hash)])).toMatch(/up to 30, which are not here/)
    expect(await ownDiffers([name(20, chain[18]!.hash)])).toMatch(/^Entry 20 of this book on the shelf is not/)
  })
})
