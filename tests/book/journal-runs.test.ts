/** Each run of the browser copies into a place of its own, and what earlier runs copied is put away in flat files. */
import { knowRuns, loseTail, ownStorage, runStorage } from './own-storage.ts'
import { ownFiles } from './own-files.ts'
import { deleteDB } from 'idb'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { attach, bytesOf } from '../../lib/book/attachments.ts'
import { seal } from '../../lib/book/chain.ts'
import { closeDatabase, database } from '../../lib/book/database.ts'
import { addSealed, countEntries, entriesForwards, getHead, verify } from '../../lib/book/entries.ts'
import { addFillLine, closeUnended, endFill, listOpenFills, startFill } from '../../lib/book/fills.ts'
import { getJob, saveJob, saveJobSince } from '../../lib/book/jobs.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { toLine } from '../../lib/book/journal/line.ts'
import { closeJournal, databaseOf, journal } from '../../lib/book/journal/place.ts'
import { found, read } from '../../lib/book/journal/told.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { context, fakeFill, fakeJob, fakeLine } from './fake.ts'
import { manyEntries } from './many.ts'
import './fresh.ts'

const photo = Uint8Array.from([0xff, 0xd8, 0xff, ...Array.from({ length: 300 }, (_, at) => at & 0xff)])
const job = { id: 'job-1', name: '14 Tannery Row' }

async function fill(id: string): Promise<void> {
  await startFill(fakeFill(id), context)
  await addFillLine(id, fakeLine('flow'))
  await endFill(id)
}

/** The browser ends, by whatever, and starts again. */
async function restart(meanwhile?: () => unknown): Promise<void> {
  await closeJournal()
  await closeDatabase()
  runStorage.clear()
  await meanwhile?.()
  await compareAtStart()
}

const loseDatabase = () => deleteDB('gapsum')

const journalsLeft = async () =>
  (await indexedDB.databases()).flatMap(({ name = '' }) => (name.startsWith('gapsum journal') ? [name] : []))

const lineFiles = () => [...ownFiles.files.keys()].filter((name) => name.endsWith('.lines')).toSorted()
const hashes = async () => (await Array.fromAsync(entriesForwards())).map(({ hash }) => hash)

knowRuns()
beforeEach(async () => {
  await closeJournal()
  ownStorage.clear()
  runStorage.clear()
  ownFiles.clear()
})

describe('runs of the browser', () => {
  test('write no journal that an earlier one wrote, and it is removed when its file has stood through a run', async () => {
    await fill('a')
    const [first] = await journalsLeft()
    await restart()
    // Both the background and the book ask for it.
    await compareAtStart()
    await fill('b')
    expect(await journalsLeft()).toEqual([first, expect.not.stringContaining(first!)])
    expect(lineFiles()).toHaveLength(1)
    await restart()
    expect(await journalsLeft()).not.toContain(first)
    expect(await found()).toBeUndefined()
  })

  test('give everything back from files and journals together', async () => {
    await fill('a')
    const { file } = await attach(
      { name: 'gauge.jpg', size: 303, arrayBuffer: async () => photo.buffer },
      { job, text: '' },
      '0.2.0',
    )
    await restart()
    await fill('b')
    await restart()
    await restart()
    await fill('c')
    const before = await hashes()
    await restart(loseDatabase)
    expect(await hashes()).toEqual(before)
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
    expect(new Uint8Array(await bytesOf(file))).toEqual(photo)
    expect(await found()).toMatchObject({ held: 4, here: 0, entries: 4, files: 1, lostCount: 0, trouble: '' })
    expect(await getHead()).toMatchObject({ number: 4 })
    await fill('d')
    expect(await verify()).toMatchObject({ ok: true, count: 5 })
  })

  test('leave a dozen files at most, however many there were', async () => {
    for (let day = 0; day < 60; day++) {
      await fill(`day ${day}`)
      await restart()
    }
    await restart()
    expect(lineFiles().length).toBeLessThanOrEqual(7)
    expect(await journalsLeft()).toHaveLength(1)
    await restart(loseDatabase)
    expect(await verify()).toMatchObject({ ok: true, count: 60 })
  })

  test('carry a fill that is under way along', async () => {
    await startFill(fakeFill('b'), context)
    await addFillLine('b', fakeLine('volume', { intended: '15810' }))
    for (let run = 0; run < 3; run++) await restart()
    await restart(loseDatabase)
    expect((await listOpenFills()).map(({ id }) => id)).toEqual(['b'])
    await closeUnended()
    await restart()
    expect(await listOpenFills()).toEqual([])
    expect(await verify()).toMatchObject({ ok: true, count: 1 })
  })

  test('put away what a version with one journal for all has left', async () => {
    runStorage.clear()
    for await (const batch of manyEntries(300, 2)) await addSealed(batch)
    const [named] = await journalsLeft()
    const entries = await (await journal()).getAll('entries')
    const keys = await (await journal()).getAllKeys('entries')
    await restart(async () => {
      await deleteDB(named!)
      const old = await (
        await import('idb')
      ).openDB(databaseOf(''), 1, {
        upgrade: (db) => ['entries', 'open', 'blobs'].forEach((name) => db.createObjectStore(name)),
      })
      for (const [at, key] of keys.entries()) await old.put('entries', entries[at], key)
      old.close()
    })
    await restart()
    expect(await journalsLeft()).not.toContain(databaseOf(''))
    await restart(loseDatabase)
    expect(await verify()).toMatchObject({ ok: true, count: 300 })
  })
})

describe('a start that is cut off', () => {
  test('before the journal was removed, or with a file that has only its name, loses and doubles nothing', async () => {
    await fill('a')
    await restart()
    ownFiles.files.set('000000099.lines', { bytes: new Uint8Array() })
    ownFiles.files.set('blob 00ff image jpeg', { bytes: new Uint8Array() })
    await fill('b')
    await restart()
    await restart(loseDatabase)
    expect(await verify()).toMatchObject({ ok: true, count: 2 })
    expect(ownFiles.files.get('000000099.lines')).toBeUndefined()
  })

  test('with no room for files keeps the journals', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined)
    ownFiles.full = true
    for (const id of ['a', 'b', 'c']) {
      await fill(id)
      await restart()
    }
    expect(await journalsLeft()).toHaveLength(4)
    await restart(loseDatabase)
    expect(await verify()).toMatchObject({ ok: true, count: 3 })
    ownFiles.full = false
    await restart()
    await restart()
    expect(await journalsLeft()).toHaveLength(1)
    vi.restoreAllMocks()
  })
})

/** What is written last into the copy of this run does not reach the disk. */
async function tearCopy(last: number): Promise<void> {
  const copy = await journal()
  const keys = await copy.getAllKeys('entries')
  for (const key of keys.slice(-last)) await copy.delete('entries', key)
}

describe('copies that are torn in two runs, one after the other', () => {
  test.each([1, 3])('lose nothing: the newest entries stand in a third place (the last %i torn)', async (torn) => {
    for (const id of ['a', 'b']) await fill(id)
    // The database's log was torn: it has all that the copy gives back, and the browser deletes it at the start after next.
    await restart(async () => (await database()).delete('entries', 2))
    expect(await found()).toMatchObject({ entries: 1, lostCount: 0 })
    await read()
    for (const id of ['c', 'd', 'e']) await fill(id)
    const before = await hashes()
    await tearCopy(torn)
    await restart(loseDatabase)
    expect(await hashes()).toEqual(before)
    expect(await found()).toMatchObject({ held: 5, here: 0, entries: 5, lostCount: 0 })
    expect(await verify()).toMatchObject({ ok: true, count: 5 })
    // The second copy is whole again before anything is added: the next loss of the database finds all of it there.
    ownStorage.clear()
    await restart(loseDatabase)
    expect(await hashes()).toEqual(before)
  })

  test('complete either from the other before a page reads', async () => {
    for (const id of ['a', 'b', 'c']) await fill(id)
    const before = await hashes()
    await restart(async () => {
      await tearCopy(1)
    })
    await restart(loseDatabase)
    expect(await hashes(), 'the copy lacked what the book had').toEqual(before)
    await read()
    await restart(async () => (await database()).delete('entries', 3))
    expect(await hashes(), 'the book lacked what the copy had').toEqual(before)
  })

  test('give back no entry that does not lead to the newest known', async () => {
    for (const id of ['a', 'b']) await fill(id)
    await tearCopy(2)
    const name = 'book tail 2'
    const kept = ((await ownStorage.get(name)) as Record<string, string>)[name]!
    const forged = { ...(JSON.parse(kept.slice(9)) as Entry), at: '2020-01-01T00:00:00.000Z' }
    await ownStorage.set({ [name]: toLine({ ...forged, hash: await seal(forged) }) })
    await restart(loseDatabase)
    expect(await hashes()).toEqual([])
    expect(await found()).toMatchObject({ held: 2, lostCount: 2 })
  })
})

/** Four entries in a file that has stood through a run, so that it alone has them beside the database. */
async function oneFile(): Promise<string> {
  for (const id of ['a', 'b', 'c', 'd']) await fill(id)
  await restart()
  await restart()
  await loseTail()
  return lineFiles().at(-1)!
}

describe('a file of lines', () => {
  test('that was cut off counts for nothing: what it held is copied again', async () => {
    await oneFile()
    for (const bytes of [1, 30, 400]) {
      const newest = lineFiles().at(-1)!
      ownFiles.files.set(newest, { bytes: ownFiles.files.get(newest)!.bytes.slice(0, -bytes) })
      await restart()
      await restart()
      await restart(loseDatabase)
      expect(await verify(), `${bytes} bytes cut`).toMatchObject({ ok: true, count: 4 })
      await read()
    }
  })

  test('that is damaged while the database is lost gives back what is whole; the rest is told by number', async () => {
    const name = await oneFile()
    const text = new TextDecoder().decode(ownFiles.files.get(name)!.bytes)
    const lines = text.split('\n')
    lines[1] = lines[1]!.replace('754', '755')
    ownFiles.files.set(name, { bytes: new TextEncoder().encode(lines.slice(0, 3).join('\n')) })
    await restart(loseDatabase)
    expect((await Array.fromAsync(entriesForwards())).map(({ number }) => number)).toEqual([1, 3])
    expect(await found()).toMatchObject({ held: 4, here: 0, entries: 2, lost: [2, 4], lostCount: 2 })
    expect([...ownFiles.files.keys()], 'nothing is removed while something is missing').toContain(name)
  })

  test('with a line that somebody made up gives that line back to nobody', async () => {
    const name = await oneFile()
    const lines = new TextDecoder().decode(ownFiles.files.get(name)!.bytes).split('\n')
    const forged = { ...(JSON.parse(lines[1]!.slice(9)) as object), at: '2020-01-01T00:00:00.000Z' }
    lines[1] = toLine(forged)
    ownFiles.files.set(name, { bytes: new TextEncoder().encode(lines.join('\n')) })
    await restart(loseDatabase)
    expect((await Array.fromAsync(entriesForwards())).map(({ number }) => number)).toEqual([1, 3, 4])
    expect(await found()).toMatchObject({ lost: [2] })
  })
})

test('who reads a job first after a start reads it as it was typed last', async () => {
  const first = await saveJob(fakeJob())
  const typed = await saveJobSince({ ...first, building: { ...first.building, volume: '15790' } }, first.updated)
  await (await database()).put('jobs', first)
  await closeDatabase()
  await closeJournal()
  // The browser starts, and a page reads before the background has compared anything.
  runStorage.clear()
  expect(await getJob('job-1')).toEqual('kept' in typed && typed.kept)
  expect(await countEntries()).toBe(0)
})
