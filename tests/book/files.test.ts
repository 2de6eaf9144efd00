import { readFileSync } from 'node:fs'
import { IDBFactory } from 'fake-indexeddb'
import { parse } from 'papaparse'
import { beforeEach, describe, expect, test } from 'vitest'
import { attach, bytesOf } from '../../lib/book/attachments.ts'
import { csvParts } from '../../lib/book/csv.ts'
import { database } from '../../lib/book/database.ts'
import { listDevices, saveDevice } from '../../lib/book/devices.ts'
import { entriesForwards, getEntry, listEntries, verify } from '../../lib/book/entries.ts'
import { addFillLine, closeUnended, endFill, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport } from '../../lib/book/import.ts'
import { deleteJob, getJob, listDeletedJobs, listJobs, saveJob } from '../../lib/book/jobs.ts'
import { fileParts, openBookFile, wholeBook } from '../../lib/book/json.ts'
import { listLimits, saveLimit } from '../../lib/book/limits.ts'
import { listMaps, mapVersions, saveMap } from '../../lib/book/maps.ts'
import { getSettings, saveSettings } from '../../lib/book/settings.ts'
import { context, fakeDevice, fakeFill, fakeJob, fakeLine, fakeMap } from './fake.ts'
import { reopen } from './fresh.ts'

const bytes = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])
const photo = { name: 'gauge.jpg', size: 7, arrayBuffer: async () => bytes.slice().buffer }
const version1 = () => readFileSync(new URL('./versions/file-1.json', import.meta.url), 'utf8')

async function text(parts: AsyncIterable<string>): Promise<string> {
  let whole = ''
  for await (const part of parts) whole += part
  return whole
}

async function fill(id: string, overrides: Parameters<typeof fakeLine>[1] = {}) {
  await startFill(fakeFill(id), context)
  await addFillLine(id, fakeLine('flow', overrides))
  return endFill(id)
}

async function otherMachine() {
  await reopen()
  globalThis.indexedDB = new IDBFactory()
}

const book = (file: string) => openBookFile(new Blob([file]))
const plan = async (file: string) => planImport(await book(file))

async function takeIn(file: string) {
  const source = await book(file)
  await applyImport(await planImport(source), source)
}

const read = (csv: string) => parse<string[]>(csv.replace(/^\uFEFF/, ''), { skipEmptyLines: true })

describe('csv', () => {
  test('has a byte order mark, CRLF line ends and a header in words', async () => {
    await fill('a')
    const csv = await text(csvParts(entriesForwards()))
    expect(csv.startsWith('\uFEFFEntry,Added at,Kind,Job,')).toBe(true)
    expect(csv.endsWith('\r\n')).toBe(true)
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
  })

  test('has one row for each binding, also for those that the fill did not reach', async () => {
    await fill('a')
    const { data, errors } = read(await text(csvParts(entriesForwards())))
    expect(errors).toEqual([])
    const [header, ...rows] = data
    const outcome = header!.indexOf('Outcome')
    const control = header!.indexOf('Control')
    expect(rows.map((row) => [row[control], row[outcome]])).toEqual([
      ['CFM at 50 Pa', 'entered'],
      ['Conditioned volume', 'not reached'],
      ['Signed test report', 'not reached'],
    ])
    expect(rows.every((row) => row.length === header!.length)).toBe(true)
  })

  // The leading characters: OWASP, "CSV Injection".
  test.each([
    ['=1+1', "'=1+1"],
    ['+44', "'+44"],
    ['-1.0', '-1.0'],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\tx', "'\tx"],
    ['\rx', "'\rx"],
    ['=1+1\n=2', "'=1+1\n=2"],
    ['＝1', "'＝1"],
    ['1,445.1', '1,445.1'],
    ['a "quoted"\nnote; ünïcode ≤ 3', 'a "quoted"\nnote; ünïcode ≤ 3'],
  ])('reads back %j as %j', async (readBack, expected) => {
    await fill('a', { readBack })
    const { data } = read(await text(csvParts(entriesForwards())))
    expect(data[1]![data[0]!.indexOf('Read back')]).toBe(expected)
  })
})

describe('a book file', () => {
  beforeEach(async () => {
    await saveJob(fakeJob())
    await saveJob(fakeJob({ id: 'job-2' }))
    await deleteJob('job-2')
    await saveDevice(fakeDevice())
    await saveMap(fakeMap())
    await saveMap(fakeMap({ name: 'LC-7, part C' }))
    await fill('a')
    await fill('b')
    await startFill(fakeFill('c'), context)
    await closeUnended()
  })

  test('makes the same book on another machine', async () => {
    const file = await text(wholeBook())
    const before = {
      entries: await listEntries(),
      jobs: await listJobs(),
      maps: await mapVersions('map-1'),
      devices: await listDevices(),
    }
    await otherMachine()
    await takeIn(file)
    expect({
      entries: await listEntries(),
      jobs: await listJobs(),
      maps: await mapVersions('map-1'),
      devices: await listDevices(),
    }).toEqual(before)
    expect((await listDeletedJobs()).map(({ job }) => job.id)).toEqual(['job-2'])
    expect(await verify()).toMatchObject({ ok: true, count: 3 })
    await fill('d')
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
  })

  test('changes nothing when everything is there already', async () => {
    await attach(photo, { job: { id: 'job-1', name: '14 Tannery Row' }, text: '' }, '0.2.0')
    expect(await plan(await text(wholeBook()))).toEqual({
      jobs: { add: [], same: 2, kept: [] },
      devices: { add: [], same: 1, kept: [] },
      maps: { add: [], same: 2, kept: [], next: [] },
      limits: { add: [], same: 0, kept: [] },
      entries: { add: 0, same: 4, refused: '' },
      joining: { after: 4, holes: [], gaps: [] },
      others: [],
      nameless: 0,
      damaged: 0,
      blobs: { add: [], same: 1, missing: [] },
      deleted: [],
      settings: undefined,
    })
  })

  test('never overwrites: what differs stays as it is here', async () => {
    const file = await text(wholeBook())
    const mine = await saveJob(fakeJob({ building: { ...fakeJob().building, volume: '16000' } }))
    expect((await plan(file)).jobs.kept.map(({ id }) => id)).toEqual(['job-1'])
    await takeIn(file)
    expect(await getJob('job-1')).toEqual(mine)
  })

  test('adds only the entries that follow', async () => {
    const early = await text(wholeBook())
    await fill('d')
    const late = await text(wholeBook())
    await otherMachine()
    await takeIn(early)
    expect((await plan(late)).entries).toEqual({ same: 3, refused: '', add: 1 })
    await takeIn(late)
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
  })

  test('brings no entries when the book got one after the plan was shown: they would not follow it', async () => {
    const early = await text(wholeBook())
    await fill('d')
    await fill('e')
    const late = await text(wholeBook())
    await otherMachine()
    await takeIn(early)
    const source = await book(late)
    const shown = await planImport(source)
    await fill('own')
    await expect(applyImport(shown, source)).rejects.toThrow(/entry 4 .* Choose the file again/)
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
  })

  test('of another book brings no entries, and says why', async () => {
    const file = await text(wholeBook())
    await otherMachine()
    const mine = await fill('z')
    expect((await plan(file)).entries).toMatchInlineSnapshot(`
      {
        "add": 0,
        "refused": "The file's entry 1 is not this book's entry 1: they are two books. The entries stay in the file; the rest can be taken in.",
        "same": 0,
      }
    `)
    await takeIn(file)
    expect(await listEntries()).toEqual([mine])
    expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1'])
  })

  test('of the first version with a changed entry brings no entries', async () => {
    const changed = version1().replace('"readBack": "754"', '"readBack": "700"')
    await otherMachine()
    const { entries } = await plan(changed)
    expect(entries.add).toBe(0)
    expect(entries.refused).toMatchInlineSnapshot(
      `"Entry 1 is not what was written: its fingerprint does not fit its content. So the entries of this file cannot begin this book; the rest can be taken in."`,
    )
  })

  test('of the first version is taken in whole', async () => {
    await otherMachine()
    await takeIn(version1())
    expect(await verify()).toMatchObject({ ok: true, count: 2 })
    expect(await listJobs()).toHaveLength(2)
    expect(await listDeletedJobs()).toHaveLength(1)
    expect(await mapVersions('map-1')).toHaveLength(2)
  })

  test('brings photos, limits and settings to a new machine; settings of its own stay', async () => {
    await saveSettings({ theme: 'dark' })
    await saveLimit({
      id: 'l',
      name: 'Marrowby',
      figure: 'air-changes-50',
      value: '3',
      unit: '1/h',
      origin: 'Permit 31',
    })
    const { file } = await attach(photo, { job: { id: 'job-1', name: '14 Tannery Row' }, text: '' }, '0.2.0')
    const whole = await text(wholeBook())
    await otherMachine()
    await takeIn(whole)
    expect((await getSettings()).theme).toBe('dark')
    expect(await listLimits()).toHaveLength(1)
    expect(new Uint8Array(await bytesOf(file))).toEqual(bytes)
    await saveSettings({ theme: 'light' })
    await takeIn(whole)
    expect((await getSettings()).theme).toBe('light')
  })

  test('with other content for a form map adds it as the next version', async () => {
    const theirs = fakeMap({ version: 2, name: 'LC-7 by the office' })
    const file = await text(fileParts({ maps: [theirs] }))
    expect((await plan(file)).maps.next.map((one) => one.theirs)).toEqual([theirs])
    await takeIn(file)
    expect((await mapVersions('map-1')).map(({ version, name }) => [version, name])).toEqual([
      [3, 'LC-7 by the office'],
      [2, 'LC-7, part C'],
      [1, 'LC-7 rebate, part C'],
    ])
    expect((await listMaps()).map(({ name }) => name)).toEqual(['LC-7 by the office'])
  })

  test('that is none is refused in words', async () => {
    await expect(book('half a fi')).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: This file is not JSON. Choose a file that was exported from the book, unchanged.]`,
    )
    await expect(book('{"format":"other"}')).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: The file was not kept: format is not what the book expects (Invalid input).]`,
    )
  })

  test('of one entry of many cannot be joined to an empty book', async () => {
    const one = (await getEntry(2))!
    await otherMachine()
    const { entries } = await plan(await text(fileParts({}, [one])))
    expect(entries).toMatchObject({ add: 0, refused: expect.stringContaining('Entry 1 is missing') })
    expect(await (await database()).count('entries')).toBe(0)
  })
})
