import { IDBFactory } from 'fake-indexeddb'
import { parse } from 'papaparse'
import { beforeEach, describe, expect, test } from 'vitest'
import { csvParts } from '../../lib/book/csv.ts'
import { database } from '../../lib/book/database.ts'
import { listDevices, saveDevice } from '../../lib/book/devices.ts'
import { entriesForwards, getEntry, listEntries, verify } from '../../lib/book/entries.ts'
import { addFillLine, closeUnended, endFill, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport } from '../../lib/book/import.ts'
import { deleteJob, getJob, listDeletedJobs, listJobs, saveJob } from '../../lib/book/jobs.ts'
import { fileParts, readBookFile, wholeBook } from '../../lib/book/json.ts'
import { listMaps, mapVersions, saveMap } from '../../lib/book/maps.ts'
import { context, fakeDevice, fakeFill, fakeJob, fakeLine, fakeMap } from './fake.ts'
import { reopen } from './fresh.ts'

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
    ['-1.0', "'-1.0"],
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
    await applyImport(await planImport(readBookFile(file)))
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
    const plan = await planImport(readBookFile(await text(wholeBook())))
    expect(plan).toEqual({
      jobs: { add: [], same: 2, kept: [] },
      devices: { add: [], same: 1, kept: [] },
      maps: { add: [], same: 2, kept: [], next: [] },
      entries: { add: [], same: 3, refused: '' },
      deleted: [],
    })
  })

  test('never overwrites: what differs stays as it is here', async () => {
    const file = readBookFile(await text(wholeBook()))
    const mine = await saveJob(fakeJob({ building: { ...fakeJob().building, volume: '16000' } }))
    const plan = await planImport(file)
    expect(plan.jobs.kept.map(({ id }) => id)).toEqual(['job-1'])
    await applyImport(plan)
    expect(await getJob('job-1')).toEqual(mine)
  })

  test('adds only the entries that follow', async () => {
    const early = readBookFile(await text(wholeBook()))
    await fill('d')
    const late = readBookFile(await text(wholeBook()))
    await otherMachine()
    await applyImport(await planImport(early))
    const plan = await planImport(late)
    expect(plan.entries).toMatchObject({ same: 3, refused: '', add: [{ number: 4 }] })
    await applyImport(plan)
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
  })

  test('of another book brings no entries, and says why', async () => {
    const file = readBookFile(await text(wholeBook()))
    await otherMachine()
    const mine = await fill('z')
    const plan = await planImport(file)
    expect(plan.entries).toMatchInlineSnapshot(`
      {
        "add": [],
        "refused": "The file's entry 1 is not this book's entry 1: they are two books. The entries stay in the file; the rest can be taken in.",
        "same": 0,
      }
    `)
    await applyImport(plan)
    expect(await listEntries()).toEqual([mine])
    expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1'])
  })

  test('with a changed entry brings no entries', async () => {
    const file = readBookFile((await text(wholeBook())).replace('"readBack":"754"', '"readBack":"700"'))
    await otherMachine()
    const plan = await planImport(file)
    expect(plan.entries.add).toEqual([])
    expect(plan.entries.refused).toMatchInlineSnapshot(
      `"Entry 1 is not what was written: its fingerprint does not fit its content. So the entries of this file cannot begin this book; the rest can be taken in."`,
    )
  })

  test('with other content for a form map adds it as the next version', async () => {
    const theirs = fakeMap({ version: 2, name: 'LC-7 by the office' })
    const plan = await planImport(readBookFile(await text(fileParts({ maps: [theirs] }))))
    expect(plan.maps.next).toEqual([theirs])
    await applyImport(plan)
    expect((await mapVersions('map-1')).map(({ version, name }) => [version, name])).toEqual([
      [3, 'LC-7 by the office'],
      [2, 'LC-7, part C'],
      [1, 'LC-7 rebate, part C'],
    ])
    expect((await listMaps()).map(({ name }) => name)).toEqual(['LC-7 by the office'])
  })

  test('that is none is refused in words', () => {
    expect(() => readBookFile('half a fi')).toThrowErrorMatchingInlineSnapshot(
      `[BookError: This file is not JSON. Choose a file that was exported from the book, unchanged.]`,
    )
    expect(() => readBookFile('{"format":"other"}')).toThrowErrorMatchingInlineSnapshot(
      `[BookError: The file was not kept: format is not what the book expects (Invalid input).]`,
    )
  })

  test('of one entry of many cannot be joined to an empty book', async () => {
    const one = (await getEntry(2))!
    await otherMachine()
    const plan = await planImport(readBookFile(await text(fileParts({}, [one]))))
    expect(plan.entries).toMatchObject({ add: [], refused: expect.stringContaining('Entry 1 is missing') })
    expect(await (await database()).count('entries')).toBe(0)
  })
})
