/** A worker reads, checks and adds a long file; what it cannot say the page says, as if there were no worker. */
import { knowRuns, ownStorage, runStorage } from './own-storage.ts'
import { ownFiles } from './own-files.ts'
import { IDBFactory } from 'fake-indexeddb'
import { deleteDB } from 'idb'
import { afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { encrypted, openBackup } from '../../lib/book/backup.ts'
import { closeDatabase } from '../../lib/book/database.ts'
import { countEntries, entriesForwards, verify } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport, type ImportPlan } from '../../lib/book/import.ts'
import { fileParts, openBookFile, type BookSource } from '../../lib/book/json.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { closeJournal, journal } from '../../lib/book/journal/place.ts'
import { found } from '../../lib/book/journal/told.ts'
import { keptHead } from '../../lib/book/journal/keep.ts'
import { origins } from '../../lib/book/origin.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { listRows } from '../../lib/book/search.ts'
import { stoppable } from '../../lib/book/stoppable.ts'
import { generator } from '../random.ts'
import { haveNone, haveWorkers, workers } from './fake-worker.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import { reopen } from './fresh.ts'
import { manyEntries } from './many.ts'
import { refusal, turned } from './tamper.ts'

const size = 2100

let file: Blob
let entries: Entry[]

async function blobOf(all: readonly Entry[]): Promise<Blob> {
  return new Blob(await Array.fromAsync(fileParts({ book: 'theirs' }, all)))
}

beforeAll(async () => {
  entries = (await Array.fromAsync(manyEntries(size, 1))).flat()
  file = await blobOf(entries)
})

knowRuns()
beforeEach(() => {
  for (const kept of [ownStorage, runStorage, ownFiles]) kept.clear()
  haveWorkers()
})
afterEach(haveNone)

/** The file, read by workers alone: the page may not read it. */
function forWorkers(source: BookSource): BookSource {
  return {
    ...source,
    items: () => {
      throw new Error('The page read the file itself.')
    },
  }
}

const open = async (of = file) => forWorkers(await openBookFile(of))

test('a file is planned and taken in without the page reading it, and each of its steps is told', async () => {
  const source = await open()
  const shares: number[] = []
  const plan = await planImport(source, (share) => void shares.push(share))
  expect(plan).toMatchObject({ entries: { add: size, same: 0, refused: '' }, joining: { after: 0, gaps: [] } })
  expect(shares.at(-1)).toBe(1)
  expect(shares.length).toBeGreaterThan(10)
  const added: number[] = []
  await applyImport(plan, source, 'theirs.json', (count) => void added.push(count))
  expect(added).toEqual([1023, 2047, 2100])
  expect(workers.begun).toBe(2)
  expect(await verify()).toMatchObject({ ok: true, count: size })
  expect(await listRows({ text: `apply/${size}/part-c` })).toHaveLength(1)
  expect(await origins()).toMatchObject({ takenIn: [{ from: 1, to: size, file: 'theirs.json' }] })
  expect(await keptHead()).toEqual({ number: size, hash: entries.at(-1)!.hash })
  haveNone()
  await reopen()
  globalThis.indexedDB = new IDBFactory()
  ownStorage.clear()
  ownFiles.clear()
  await closeJournal()
  const { items, ...inPlace } = await openBookFile(file)
  expect(await planImport({ items, ...inPlace, posted: undefined })).toEqual(plan)
})

test('its second copy stands in files, and gives all of it back', async () => {
  const source = await open()
  await applyImport(await planImport(source), source)
  expect([...ownFiles.files.keys()].filter((name) => name.endsWith('.lines'))).toHaveLength(3)
  expect(await (await journal()).count('entries')).toBe(0)
  await closeJournal()
  await closeDatabase()
  runStorage.clear()
  await deleteDB('gapsum')
  await compareAtStart()
  expect(await verify()).toMatchObject({ ok: true, count: size })
  expect(await found()).toMatchObject({ held: size, here: 0, entries: size, lostCount: 0 })
})

test('where there is no room for files the journal has the second copy', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => undefined)
  ownFiles.full = true
  const source = await open()
  await applyImport(await planImport(source), source)
  expect(await (await journal()).count('entries')).toBe(size)
  vi.restoreAllMocks()
})

test('a backup is decrypted by the worker', async () => {
  const backup = await Array.fromAsync(encrypted(fileParts({ book: 'theirs' }, entries), 'seven grey herons'))
  const source = forWorkers(await openBookFile(await openBackup(new Blob(backup), 'seven grey herons')))
  await applyImport(await planImport(source), source)
  expect(await verify()).toMatchObject({ ok: true, count: size })
})

test('what is stopped stays whole, and the rest is added later', async () => {
  const source = await open()
  const plan = await planImport(source)
  const stop = new AbortController()
  let added = 0
  const stopAtFirst = (count: number) => {
    added = count
    stop.abort()
  }
  await expect(applyImport(plan, stoppable(source, stop.signal), 'x', stopAtFirst)).rejects.toThrow(/abort/i)
  expect(await countEntries()).toBe(added)
  expect(await verify()).toMatchObject({ ok: true, count: added })
  const again = await planImport(source)
  expect(again.entries).toMatchObject({ add: size - added, same: added })
  await applyImport(again, source, 'x')
  expect(await verify()).toMatchObject({ ok: true, count: size })
})

test('a plan is stopped while the worker reads', async () => {
  const stop = new AbortController()
  const source = stoppable(await open(), stop.signal)
  await expect(planImport(source, () => stop.abort())).rejects.toThrow(/abort/i)
})

/** Without a worker, and with one. */
async function both(work: () => Promise<unknown>): Promise<[unknown, unknown]> {
  haveNone()
  const without = await work()
  haveWorkers()
  const withOne = await work()
  expect(workers.begun).toBeGreaterThan(0)
  return [without, withOne]
}

describe('is told in the same words as without a worker:', () => {
  test('a bit that was turned', async () => {
    const bytes = new Uint8Array(await (await blobOf(entries.slice(0, 60))).arrayBuffer())
    const random = generator(15)
    for (let sample = 0; sample < 12; sample++) {
      const bit = Math.floor(random() * (bytes.length - 2) * 8) + 16
      const [without, withOne] = await both(async () => (await refusal(turned(bytes, bit)))?.problems)
      expect(withOne, `bit ${bit}`).toEqual(without)
      expect(without, `bit ${bit}`).toBeDefined()
    }
  })

  test.each([
    ['an entry that was changed and sealed in the file anew', (all: Entry[]) => void (all[7] = { ...all[7]!, at: '' })],
    ['an entry that is missing', (all: Entry[]) => void all.splice(40, 1)],
    ['an entry out of its place', (all: Entry[]) => void all.splice(50, 0, all[3]!)],
    ['an entry that is none', (all: Entry[]) => void (all[9] = { ...all[9]!, number: 'x' } as never)],
  ])('%s', async (_, change) => {
    const all = entries.slice(0, 60)
    change(all)
    const changed = await blobOf(all)
    const [without, withOne] = await both(async () =>
      planImport(await openBookFile(changed)).catch((error: unknown) => error),
    )
    expect(withOne).toEqual(without)
    expect(without).not.toMatchObject({ entries: { add: 60 } })
  })

  test('an entry with what no book writes, which is left out', async () => {
    const all = entries.slice(0, 60).with(9, { ...entries[9]!, more: 1 } as never)
    const changed = await blobOf(all)
    const [without, withOne] = await both(async () => planImport(await openBookFile(changed)))
    expect(withOne).toEqual(without)
    const source = await open(changed)
    await applyImport(await planImport(source), source)
    expect((await Array.fromAsync(entriesForwards()))[9]).toEqual(entries[9])
  })

  test('an entry that the book got since the plan', async () => {
    const source = await open()
    const plan: ImportPlan = await planImport(source)
    await startFill(fakeFill('meanwhile'), context)
    await addFillLine('meanwhile', fakeLine('flow'))
    await endFill('meanwhile')
    await expect(applyImport(plan, source)).rejects.toThrow(/^The book got entry 1 meanwhile/)
    expect(await countEntries()).toBe(1)
  })
})

test.each([1, 2])('the page reads on where a worker ended after %i messages', async (messages) => {
  workers.dieAfter = messages
  const source = await openBookFile(file)
  const plan = await planImport(source)
  expect(plan.entries).toMatchObject({ add: size })
  await applyImport(plan, source)
  expect(await verify()).toMatchObject({ ok: true, count: size })
  expect((await Array.fromAsync(entriesForwards())).map(({ hash }) => hash)).toEqual(entries.map(({ hash }) => hash))
})
