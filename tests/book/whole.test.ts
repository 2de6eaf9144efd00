/** The whole book against its entries: list, search and attachments cannot say something else under a chain that fits. */
import { beforeEach, describe, expect, test } from 'vitest'
import { attach } from '../../lib/book/attachments.ts'
import { seal, verifyChain } from '../../lib/book/chain.ts'
import { database } from '../../lib/book/database.ts'
import { addSealed, getEntry, getHead, listEntries } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport } from '../../lib/book/import.ts'
import { indexOlder, renewRows } from '../../lib/book/indexing.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { fileParts, openBookFile, wholeBook } from '../../lib/book/json.ts'
import { addNote } from '../../lib/book/notes.ts'
import { originOf, origins } from '../../lib/book/origin.ts'
import type { Entry, FillEntry } from '../../lib/book/schema.ts'
import type { FillRow } from '../../lib/book/rows.ts'
import { listRows } from '../../lib/book/search.ts'
import { verifyBook } from '../../lib/book/verify.ts'
import { emptyTest } from '../../lib/job/empty.ts'
import { unitSets } from '../../lib/job/units.ts'
import { context, fakeFill, fakeJob, fakeLine } from './fake.ts'
import './fresh.ts'
import { manyEntries } from './many.ts'

const about = { id: 'job-1', name: '14 Tannery Row' }
const photo = Uint8Array.from([0xff, 0xd8, 0xff, 7])
const followUp = { kind: 'follow-up', job: about, reason: '', text: '', due: '' } as const

/** Three fills, a follow-up of the first, and a photo. */
async function begin(): Promise<void> {
  await saveJob(fakeJob({ tests: [{ ...emptyTest('final', 'enclosure', unitSets.IP), date: '2026-02-11' }] }))
  for (const id of ['a', 'b', 'c']) {
    await startFill(fakeFill(id), context)
    await addFillLine(id, fakeLine('flow'))
    await endFill(id)
  }
  await addNote({ ...followUp, of: 1, status: 'accepted', confirmation: 'LC-88120', keepUntil: '2031-02-11' }, '0.2.0')
  await attach(
    { name: 'gauge.jpg', size: 4, arrayBuffer: async () => photo.slice().buffer },
    { job: about, text: '' },
    '0.2.0',
  )
}

const file = async (parts: AsyncIterable<string>): Promise<Blob> => {
  const texts: string[] = []
  for await (const part of parts) texts.push(part)
  return new Blob(texts)
}

const changeRow = async (number: number, change: object) => {
  const db = await database()
  await db.put('rows', { ...(await db.get('rows', number))!, ...change } as never)
}

describe('a book that was tampered with behind its back', () => {
  beforeEach(begin)

  test('that nobody touched is whole, also a second time', async () => {
    for (const thorough of [false, true])
      expect(await verifyBook(thorough)).toMatchObject({
        chain: { ok: true, count: 5 },
        rows: [],
        words: [],
        files: [],
      })
  })

  test('a row that says another outcome, status or name is found, and says what the entry says again', async () => {
    const before = await listRows()
    await changeRow(2, { counts: { entered: 3 }, job: { id: 'job-1', name: '15 Tannery Row' } })
    await changeRow(1, { status: 'rejected', confirmation: 'LC-1' })
    await changeRow(4, { words: 'rejected' })
    expect(await verifyBook(false)).toMatchObject({ chain: { ok: true }, rows: [1, 2, 4] })
    expect(await listRows()).toEqual(before)
    expect(await verifyBook(false)).toMatchObject({ rows: [] })
  })

  test('a row that was removed, and one that has no entry', async () => {
    const before = await listRows()
    const db = await database()
    await db.delete('rows', 2)
    await db.put('rows', { ...(await db.get('rows', 3))!, number: 9 })
    expect((await verifyBook(false)).rows).toEqual([2, 9])
    expect(await listRows()).toEqual(before)
  })

  test('words that lead to no entry any more are found, and lead there again', async () => {
    expect(await listRows({ text: 'tannery' })).toHaveLength(5)
    const db = await database()
    for (const key of await db.getAllKeys('words')) if (key[1] === 'ta') await db.put('words', '', key)
    expect(await listRows({ text: 'tannery' })).toEqual([])
    expect(await verifyBook(false)).toMatchObject({ chain: { ok: true }, rows: [], words: [1, 2, 3, 4, 5] })
    expect(await listRows({ text: 'tannery' })).toHaveLength(5)
  })

  test('an attachment that is gone, or another', async () => {
    const db = await database()
    const [blob] = await db.getAll('blobs')
    await db.put('blobs', { ...blob!, bytes: Uint8Array.from([0xff, 0xd8, 0xff, 8]).buffer })
    expect((await verifyBook(false)).files).toEqual([])
    expect((await verifyBook(true)).files).toEqual([{ entry: 5, name: 'gauge.jpg', fault: 'changed' }])
    await db.delete('blobs', blob!.sha256)
    expect((await verifyBook(false)).files).toEqual([{ entry: 5, name: 'gauge.jpg', fault: 'missing' }])
  })

  test('an entry changed, removed or cut off is still the chain’s to tell', async () => {
    const db = await database()
    await db.put('entries', { ...((await getEntry(2)) as FillEntry), complete: true })
    expect((await verifyBook(false)).chain).toMatchObject({ ok: false, entry: 2, misfit: 'changed' })
    await db.delete('entries', 2)
    expect((await verifyBook(false)).chain).toMatchObject({ ok: false, entry: 2, misfit: 'missing' })
  })
})

test('rows that an earlier version made are made again in this version’s form, with what was said since', async () => {
  await begin()
  const db = await database()
  const before = await listRows()
  for (const row of await db.getAll('rows')) {
    const { tested: _, ...older } = row as FillRow
    await db.put('rows', { ...older, status: 'entered', text: 'older' } as never)
  }
  await db.put('single', { rows: 1 }, 'form')
  await renewRows()
  expect(await listRows()).toEqual(before)
  expect((await listRows({ text: 'halvorsen' })).map(({ number }) => number)).toEqual([3, 2, 1])
  expect(await verifyBook(false)).toMatchObject({ rows: [], words: [] })
})

test('entries without rows get them with the follow-ups that stand further on', async () => {
  const entries: Entry[] = []
  for await (const some of manyEntries(600)) entries.push(...some)
  await addSealed(entries)
  await addNote({ ...followUp, of: 3, status: 'accepted', confirmation: 'LC-7', keepUntil: '' }, '0.2.0')
  const db = await database()
  const kept = await db.getAll('rows')
  await db.clear('rows')
  await db.clear('words')
  await db.put('single', { to: 601 }, 'older')
  await indexOlder()
  expect(await db.getAll('rows')).toEqual(kept)
})

const at = (minutes: number) => new Date(Date.UTC(2026, 1, 1) + minutes * 60_000).toISOString()
const chainOf = async (times: string[]) => {
  const entries: Entry[] = []
  for (const [index, time] of times.entries()) {
    const unsealed = {
      ...((await getEntry(1)) as FillEntry),
      number: index + 1,
      at: time,
      previous: entries.at(-1)?.hash ?? '',
    }
    entries.push({ ...unsealed, hash: await seal(unsealed) })
  }
  return verifyChain(entries)
}

describe('where entries come from', () => {
  test('what is written here bears the book’s id under its seal', async () => {
    await begin()
    const known = await origins()
    for (const number of [1, 4]) {
      const entry = (await getEntry(number))!
      expect(entry.book).toBe(known.book)
      expect(originOf(entry, known)).toEqual({ is: 'typed here' })
      expect(await seal({ ...entry, book: 'another' })).not.toBe(entry.hash)
    }
  })

  test('what a file brings is marked with the file, also where it bears this book’s id', async () => {
    await begin()
    const book = await file(wholeBook())
    const { book: id } = await origins()
    const db = await database()
    for (const store of ['entries', 'rows', 'words', 'blobs'] as const) await db.clear(store)
    await db.delete('single', 'head')
    const source = await openBookFile(book)
    await applyImport(await planImport(source), source, 'office.json')
    expect(await verifyBook(true)).toMatchObject({ chain: { ok: true, count: 5 }, rows: [], words: [], files: [] })
    const known = await origins()
    expect(known.takenIn).toMatchObject([{ from: 1, to: 5, file: 'office.json' }])
    expect(originOf((await getEntry(2))!, known)).toMatchObject({ is: 'taken in', file: 'office.json', book: id })
    await startFill(fakeFill('d'), context)
    expect(originOf(await endFill('d'), known)).toEqual({ is: 'typed here' })
  })

  test('back-dated entries that were forged to follow this book are marked and their times told', async () => {
    await begin()
    const head = (await getHead())!
    const forged: Entry[] = []
    for await (const some of manyEntries(7, 2, head)) forged.push(...some)
    const source = await openBookFile(await file(fileParts({}, [...(await listEntries()).toReversed(), ...forged])))
    const plan = await planImport(source)
    expect(plan.entries).toMatchObject({ add: 2, refused: '' })
    await applyImport(plan, source, 'from a friend.json')
    const { chain } = await verifyBook(false)
    expect(chain).toMatchObject({ ok: true, count: 7, backwards: [{ entry: 6, at: forged[0]!.at }] })
    expect(originOf((await getEntry(6))!, await origins())).toMatchObject({
      is: 'taken in',
      file: 'from a friend.json',
    })
  })

  test('an entry of another book whose file is not known is told by its id', async () => {
    await begin()
    const entry = (await getEntry(1))!
    expect(originOf({ ...entry, book: 'other' }, await origins())).toEqual({ is: 'of another book', book: 'other' })
    expect(originOf({ number: 1 }, await origins())).toEqual({ is: 'not known' })
  })

  test('a clock set right by a moment is not told', async () => {
    await begin()
    expect(await chainOf([at(0), at(-0.5), at(3)])).not.toHaveProperty('backwards')
    expect(await chainOf([at(0), at(10), at(5)])).toMatchObject({ backwards: [{ entry: 3 }] })
  })
})

test('a book file without an attachment that its entries name says which', async () => {
  await begin()
  const entries = (await listEntries()).toReversed()
  const db = await database()
  for (const store of ['entries', 'rows', 'words', 'blobs'] as const) await db.clear(store)
  await db.delete('single', 'head')
  const source = await openBookFile(await file(fileParts({}, entries)))
  expect((await planImport(source)).blobs).toEqual({ add: [], same: 0, missing: ['gauge.jpg'] })
})

test('entries are found by tester, company, device and day of the test', async () => {
  await begin()
  for (const text of ['halvorsen', 'bellwether', '2026-02-11'])
    expect((await listRows({ text })).map(({ number }) => `${text} ${number}`)).toEqual(
      [3, 2, 1].map((number) => `${text} ${number}`),
    )
  expect(await listRows({ testedFrom: '2026-02-11', testedTo: '2026-02-11' })).toHaveLength(3)
  expect(await listRows({ testedFrom: '2026-02-12' })).toEqual([])
  expect(await listRows({ testedTo: '2026-02-10' })).toEqual([])
  expect((await listRows({ kept: true })).map(({ number }) => number)).toEqual([1])
})
