/** The second copy: whatever the database loses is given back and told, and nothing is ever silently empty. */
import { loseTail, ownStorage } from './own-storage.ts'
import { deleteDB } from 'idb'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { attach, bytesOf } from '../../lib/book/attachments.ts'
import { closeDatabase, database } from '../../lib/book/database.ts'
import { getDevice, saveDevice } from '../../lib/book/devices.ts'
import { addSealed, countEntries, entriesForwards, getEntry, getHead, verify } from '../../lib/book/entries.ts'
import { addFillLine, closeUnended, endFill, listOpenFills, startFill } from '../../lib/book/fills.ts'
import { deleteJob, getJob, listJobs, restoreJob, saveJob, saveJobSince } from '../../lib/book/jobs.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { fromLine, checksum, toLine } from '../../lib/book/journal/line.ts'
import { closeJournal, journal } from '../../lib/book/journal/place.ts'
import { found, read } from '../../lib/book/journal/told.ts'
import { listLimits, saveLimit } from '../../lib/book/limits.ts'
import { mapVersions, saveMap } from '../../lib/book/maps.ts'
import { addNote } from '../../lib/book/notes.ts'
import { listRows } from '../../lib/book/search.ts'
import { getSettings, saveSettings } from '../../lib/book/settings.ts'
import { context, fakeDevice, fakeFill, fakeJob, fakeLine, fakeMap } from './fake.ts'
import { manyEntries } from './many.ts'
import './fresh.ts'

const limit = { id: 'limit-1', name: 'Permit 31', figure: 'air-changes-50', value: '2.5', unit: '1/h', origin: '' }
const photo = Uint8Array.from([0xff, 0xd8, 0xff, ...Array.from({ length: 300 }, (_, at) => at & 0xff)])
const job = { id: 'job-1', name: '14 Tannery Row' }

async function fill(id: string): Promise<void> {
  await startFill(fakeFill(id), context)
  await addFillLine(id, fakeLine('flow'))
  await endFill(id)
}

/** As a browser does that finds the log of the database damaged: it deletes it, and says nothing. */
async function lose(): Promise<void> {
  await closeDatabase()
  await deleteDB('gapsum')
}

/** What was written last is gone, as after a kill that tore the log. */
async function cut(from: number): Promise<void> {
  const db = await database()
  for (const number of (await db.getAllKeys('entries')).filter((one) => one >= from)) {
    await db.delete('entries', number)
    await db.delete('rows', number)
  }
  const last = (await db.getAll('entries')).at(-1)
  await db.put('single', { number: last!.number, hash: last!.hash }, 'head')
  await closeDatabase()
}

const entries = async () => Array.fromAsync(entriesForwards())

beforeEach(async () => {
  await closeJournal()
  ownStorage.clear()
})
afterEach(closeJournal)

describe('a line', () => {
  test('has the check value of CRC-32 (IEEE 802.3, from memory)', () => {
    expect(checksum('123456789')).toBe('cbf43926')
  })

  test('is read back as it was written, and not when a bit of it has turned', () => {
    const line = toLine({ text: 'ünïcode ≤ 3', none: null })
    expect(fromLine(line)).toEqual({ text: 'ünïcode ≤ 3', none: null })
    for (let at = 0; at < line.length; at++) {
      const turned = line.slice(0, at) + String.fromCharCode(line.charCodeAt(at) ^ 1) + line.slice(at + 1)
      expect(fromLine(turned), `at ${at}`).toBeUndefined()
    }
    expect(fromLine(line.slice(0, -1))).toBeUndefined()
  })
})

describe('a database that the browser deleted', () => {
  test('has all entries, words, jobs, attachments and settings again, and says so', async () => {
    await saveJob(fakeJob())
    await saveJob(fakeJob({ id: 'job-2' }))
    await deleteJob('job-2')
    await saveDevice(fakeDevice())
    await saveMap(fakeMap())
    await saveMap(fakeMap({ name: 'LC-7 rebate, part D' }))
    await saveLimit(limit)
    await saveSettings({ theme: 'dark', onboarded: true })
    for (const id of ['a', 'b', 'c']) await fill(id)
    await addNote({ kind: 'correction', job, of: 1, reason: 'Plans', text: '15790' }, '0.2.0')
    const { file } = await attach(
      { name: 'gauge.jpg', size: 303, arrayBuffer: async () => photo.buffer },
      { job, text: '' },
      '0.2.0',
    )
    const before = await entries()
    const jobs = [await getJob('job-1'), await getJob('job-2')]
    expect(await found()).toBeUndefined()

    await lose()

    expect(await entries()).toEqual(before)
    expect(await verify()).toMatchObject({ ok: true, count: 5, hash: before.at(-1)!.hash })
    expect([await getJob('job-1'), await getJob('job-2')]).toEqual(jobs)
    expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1'])
    expect(await getDevice('device-1')).toEqual(fakeDevice())
    expect((await mapVersions('map-1')).map(({ version }) => version)).toEqual([2, 1])
    expect((await listLimits()).map(({ id }) => id)).toEqual(['limit-1'])
    expect(await getSettings()).toMatchObject({ theme: 'dark', onboarded: true })
    expect((await listRows({ text: 'tannery' })).map(({ number }) => number)).toEqual([5, 4, 3, 2, 1])
    expect(new Uint8Array(await bytesOf(file))).toEqual(photo)
    expect(await found()).toMatchObject({ held: 5, here: 0, entries: 5, jobs: 2, files: 1, lostCount: 0, trouble: '' })
    await read()
    expect(await found()).toBeUndefined()
  })

  test('goes on after it: the next entry follows the newest that was given back', async () => {
    for (const id of ['a', 'b']) await fill(id)
    await lose()
    await fill('c')
    expect(await verify()).toMatchObject({ ok: true, count: 3 })
    await lose()
    expect(await verify()).toMatchObject({ ok: true, count: 3 })
  })

  test('has the fill again that was under way, with its lines; it becomes an entry', async () => {
    await fill('a')
    await startFill(fakeFill('b'), context)
    await addFillLine('b', fakeLine('volume', { intended: '15810' }))
    await addFillLine('b', fakeLine('flow'))
    await lose()
    expect((await listOpenFills()).map(({ id }) => id)).toEqual(['b'])
    await closeUnended()
    const entry = await getEntry(2)
    expect(entry).toMatchObject({ id: 'b', complete: false })
    expect(entry?.kind === 'fill' && entry.lines.map(({ binding }) => binding)).toEqual(['volume', 'flow'])
    expect(await (await journal()).count('open')).toBe(0)
  })

  test('is as new when there never was anything, and says nothing', async () => {
    expect(await countEntries()).toBe(0)
    expect(await found()).toBeUndefined()
    expect(await (await database()).get('single', 'restoring')).toBeUndefined()
  })

  test('and its second copy too: that is told, with how many entries there were', async () => {
    for (const id of ['a', 'b', 'c']) await fill(id)
    await saveJob(fakeJob())
    await closeJournal()
    await lose()
    await deleteDB('gapsum journal')
    await loseTail()
    expect(await countEntries()).toBe(0)
    expect(await found()).toMatchObject({ held: 3, here: 0, entries: 0, jobs: 1, lost: [1, 2, 3], lostCount: 3 })
  })

  test('whose giving back is cut off goes on when it is opened next', async () => {
    for await (const batch of manyEntries(700, 2)) await addSealed(batch)
    await lose()
    const opening = database().catch(() => undefined)
    // Some batches are through, others are not.
    const raw = await import('idb').then(({ openDB }) => openDB('gapsum'))
    while ((await raw.count('entries')) < 256) await new Promise((resolve) => setTimeout(resolve))
    expect(await raw.get('single', 'restoring')).toBeDefined()
    raw.close()
    await opening
    await closeDatabase()
    expect(await verify()).toMatchObject({ ok: true, count: 700 })
    expect((await listRows({ text: 'apply/1/part-c' })).map(({ number }) => number)).toEqual([1])
  })

  test('gets back what is whole of a damaged second copy, and the rest is told by number', async () => {
    for (const id of ['a', 'b', 'c', 'd']) await fill(id)
    const copy = await journal()
    const [, second] = await copy.getAllKeys('entries')
    const line = (await copy.get('entries', second!))!
    await copy.put('entries', line.replace('754', '755'), second)
    await loseTail()
    await lose()
    expect((await entries()).map(({ number }) => number)).toEqual([1, 3, 4])
    expect(await found()).toMatchObject({ held: 4, entries: 3, lost: [2], lostCount: 1 })
    expect(await verify()).toMatchObject({ ok: false, entry: 2, misfit: 'missing' })
  })

  test('gets back no line that was made up: its checksum fits, its seal does not', async () => {
    for (const id of ['a', 'b']) await fill(id)
    const copy = await journal()
    const [, second] = await copy.getAllKeys('entries')
    const entry = fromLine(await copy.get('entries', second!)) as object
    await copy.put('entries', toLine({ ...entry, at: '2020-01-01T00:00:00.000Z' }), second)
    await loseTail()
    await lose()
    expect((await entries()).map(({ number }) => number)).toEqual([1])
    expect(await found()).toMatchObject({ lost: [2] })
  })
})

describe('a database that ends too early', () => {
  test('has its last entries again before another takes their numbers', async () => {
    for (const id of ['a', 'b', 'c', 'd']) await fill(id)
    const before = await entries()
    await cut(3)
    expect(await countEntries()).toBe(2)
    await fill('e')
    expect((await entries()).slice(0, 4)).toEqual(before)
    expect(await verify()).toMatchObject({ ok: true, count: 5 })
    expect(await found()).toMatchObject({ held: 4, here: 2, entries: 2 })
    expect(await getHead()).toMatchObject({ number: 5 })
  })

  test('has them again at the start of the browser, and one from the middle', async () => {
    for (const id of ['a', 'b', 'c', 'd']) await fill(id)
    await (await database()).delete('entries', 2)
    await cut(4)
    await compareAtStart()
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
    expect(await found()).toMatchObject({ here: 2, entries: 2 })
  })

  test('and a shorter second copy: what is only in the head is told', async () => {
    for (const id of ['a', 'b', 'c']) await fill(id)
    await cut(3)
    const copy = await journal()
    await copy.delete('entries', (await copy.getAllKeys('entries')).at(-1)!)
    await loseTail()
    await compareAtStart()
    expect(await found()).toMatchObject({ held: 3, here: 2, entries: 0, lost: [3], lostCount: 1 })
    await read()
    await compareAtStart()
    expect(await found(), 'told once').toBeUndefined()
  })

  test('has the later text of a job', async () => {
    const first = await saveJob(fakeJob())
    const typed = await saveJobSince({ ...first, building: { ...first.building, volume: '15790' } }, first.updated)
    await (await database()).put('jobs', first)
    await compareAtStart()
    expect(await getJob('job-1')).toEqual('kept' in typed && typed.kept)
    expect(await found()).toMatchObject({ jobs: 1 })
  })
})

describe('a second copy that is short', () => {
  test('is completed from the database', async () => {
    for (const id of ['a', 'b', 'c']) await fill(id)
    await saveJob(fakeJob())
    await closeJournal()
    await deleteDB('gapsum journal')
    ownStorage.clear()
    await compareAtStart()
    expect(await found(), 'nothing was lost').toBeUndefined()
    await lose()
    expect(await verify()).toMatchObject({ ok: true, count: 3 })
    expect(await getJob('job-1')).toBeDefined()
  })
})

test('what was put back from the deleted ones is not deleted again', async () => {
  await saveJob(fakeJob())
  await deleteJob('job-1')
  await restoreJob('job-1')
  await lose()
  expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1'])
})

test('an entry stays added where the second copy cannot be written', async () => {
  await fill('a')
  await closeJournal()
  const closed = await journal()
  closed.close()
  await fill('b')
  expect(await verify()).toMatchObject({ ok: true, count: 2 })
  await closeJournal()
  await compareAtStart()
  await lose()
  expect(await verify()).toMatchObject({ ok: true, count: 2 })
})
