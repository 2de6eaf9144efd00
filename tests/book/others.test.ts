/** Books of others beside one's own: taken in from a file, verified, searched, backed up, given back, never written to. */
import { ownStorage } from './own-storage.ts'
import { ownFiles } from './own-files.ts'
import { IDBFactory } from 'fake-indexeddb'
import { deleteDB } from 'idb'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { seal } from '../../lib/book/chain.ts'
import { parse } from 'papaparse'
import { csvParts } from '../../lib/book/csv.ts'
import { checkReview } from '../../lib/book/review.ts'
import { readReview, reviewParts } from '../../lib/book/review-file.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { closeDatabase, database, databaseBeside } from '../../lib/book/database.ts'
import { countEntries, entriesForwards, entriesShown, getEntry, verify } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport, usually, type ImportPlan } from '../../lib/book/import.ts'
import { fileParts, openBookFile, wholeBook } from '../../lib/book/json.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { closeJournal, databaseOf } from '../../lib/book/journal/place.ts'
import { found } from '../../lib/book/journal/told.ts'
import { addNote, wholeTimeline } from '../../lib/book/notes.ts'
import { allOthers, listOthers, putAwayOther, renameOther } from '../../lib/book/others.ts'
import { everyBook } from '../../lib/book/rows.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { listRows } from '../../lib/book/search.ts'
import { verifyBook } from '../../lib/book/verify.ts'
import { foundWords } from '../../lib/view/given-back.tsx'
import { context, fakeFill, fakeLine } from './fake.ts'
import { reopen } from './fresh.ts'

async function text(parts: AsyncIterable<string>): Promise<string> {
  let whole = ''
  for await (const part of parts) whole += part
  return whole
}

async function fill(id: string, street = '14 Tannery Row') {
  await startFill(fakeFill(id, { job: { id: `job of ${street}`, name: street } }), context)
  await addFillLine(id, fakeLine('flow'))
  return endFill(id)
}

/** Another browser, with a book of its own. */
async function otherMachine() {
  await reopen()
  await closeJournal()
  ownStorage.clear()
  ownFiles.clear()
  globalThis.indexedDB = new IDBFactory()
}

const open = (file: string) => openBookFile(new Blob([file]))
const plan = async (file: string) => planImport(await open(file))

async function takeIn(file: string, name = 'theirs.json', choose?: (plan: ImportPlan) => ReturnType<typeof usually>) {
  const source = await open(file)
  const planned = await planImport(source)
  await applyImport(planned, source, name, undefined, choose?.(planned))
  return planned
}

/** Changes an entry and seals it and all after it anew. */
async function forged(entries: readonly Entry[], from: number): Promise<Entry[]> {
  const all = entries.slice(0, from - 1)
  for (const entry of entries.slice(from - 1)) {
    const changed = { ...entry, job: { ...entry.job, name: '99 Nowhere' }, previous: all.at(-1)?.hash ?? '' }
    all.push({ ...changed, hash: await seal(changed) } as Entry)
  }
  return all
}

const entriesOf = (book = '') => Array.fromAsync(entriesForwards(0, book))

let theirs = ''
let theirEntries: Entry[] = []
let longer = ''

beforeEach(async () => {
  await closeJournal()
  ownStorage.clear()
  ownFiles.clear()
  for (const id of ['t1', 't2', 't3']) await fill(id, '3 Weir Street')
  theirs = await text(wholeBook())
  theirEntries = await entriesOf()
  await fill('t4', '3 Weir Street')
  longer = await text(wholeBook())
  await otherMachine()
  await fill('mine')
})
afterEach(closeJournal)

describe('a book of another', () => {
  test('is kept beside, whole, verified and named after its file; one’s own stays as it was', async () => {
    const before = await entriesOf()
    const planned = await takeIn(theirs, 'Ines, van.json')
    expect(planned.entries).toMatchObject({ add: 0, refused: expect.stringContaining('two books') })
    const [other, ...more] = await listOthers()
    expect(more).toEqual([])
    expect(other).toMatchObject({
      name: 'Ines, van.json',
      count: 3,
      hash: theirEntries[2]!.hash,
      book: theirEntries[2]!.book,
      shared: 0,
      takenIn: [{ from: 1, to: 3, file: 'Ines, van.json' }],
    })
    expect(await entriesOf(other!.key)).toEqual(theirEntries)
    expect((await verifyBook(true, undefined, other)).chain).toMatchObject({ ok: true, count: 3 })
    expect(await entriesOf()).toEqual(before)
    expect(await verify()).toMatchObject({ ok: true, count: 1 })
  })

  test('is listed and found with one’s own, by time, and alone when it is asked for', async () => {
    await takeIn(theirs)
    const [other] = await listOthers()
    const listed = async (filter: object) =>
      (await listRows(filter)).map(({ number, book = '' }) => [book === other!.key ? 'theirs' : book, number])
    expect(await listed({ book: everyBook })).toEqual([
      ['', 1],
      ['theirs', 3],
      ['theirs', 2],
      ['theirs', 1],
    ])
    expect(await listed({ book: everyBook, text: 'weir' })).toHaveLength(3)
    expect(await listed({ book: everyBook, text: 'tannery' })).toEqual([['', 1]])
    expect(await listed({ book: everyBook, order: 'oldest', limit: 2 })).toEqual([
      ['theirs', 1],
      ['theirs', 2],
    ])
    expect(await listed({ book: other!.key, text: 'weir', limit: 1 })).toEqual([['theirs', 3]])
    expect(await listed({})).toEqual([['', 1]])
    const shown = await Array.fromAsync(entriesShown({ book: everyBook, job: 'job of 3 Weir Street' }))
    expect(shown.map(({ entry }) => entry.hash)).toEqual(theirEntries.map(({ hash }) => hash).toReversed())
    expect((await wholeTimeline('job of 3 Weir Street')).map(({ entry }) => entry.number)).toEqual([1, 2, 3])
  })

  test('gets no entry: fills and notes go into one’s own', async () => {
    await takeIn(theirs)
    const [other] = await listOthers()
    await fill('later', '3 Weir Street')
    await addNote(
      { kind: 'correction', job: { id: 'job of 3 Weir Street', name: '3 Weir Street' }, of: 2, reason: 'x', text: '' },
      '0.1.0',
    )
    expect(await entriesOf(other!.key)).toEqual(theirEntries)
    expect(await countEntries()).toBe(3)
    expect((await getEntry(2))?.hash).not.toBe(theirEntries[1]!.hash)
    expect(await verify()).toMatchObject({ ok: true, count: 3 })
  })

  test('taken in again adds nothing; a longer one adds the new entries alone', async () => {
    await takeIn(theirs)
    expect((await plan(theirs)).others).toMatchObject([{ add: 0, same: 3, refused: '', differs: '' }])
    expect((await plan(longer)).others).toMatchObject([{ add: 1, same: 3, name: 'theirs.json' }])
    await takeIn(longer, 'later.json')
    const all = await listOthers()
    expect(all).toMatchObject([
      {
        name: 'theirs.json',
        count: 4,
        takenIn: [
          { from: 1, to: 3, file: 'theirs.json' },
          { from: 4, to: 4, file: 'later.json' },
        ],
      },
    ])
    expect((await verifyBook(true, undefined, all[0])).chain).toMatchObject({ ok: true, count: 4 })
    // The earlier file again: nothing is taken away.
    await takeIn(theirs)
    expect(await listOthers()).toMatchObject([{ count: 4 }])
  })

  test('that was rewritten is told, and taken in only when the person says so; then both are there', async () => {
    await takeIn(theirs)
    const file = await text(fileParts({}, await forged(theirEntries, 2)))
    const planned = await takeIn(file, 'rewritten.json')
    expect(planned.others[0]?.differs).toMatch(
      /^Entry 2 of the file is not entry 2 of theirs\.json, .* One of the two was rewritten, or the book was continued in two places\./,
    )
    expect(await listOthers()).toHaveLength(1)
    await takeIn(file, 'rewritten.json', ({ others: [one] }) => [{ planned: one!, name: 'The other one' }])
    expect((await listOthers()).map(({ name, count }) => [name, count])).toEqual([
      ['The other one', 3],
      ['theirs.json', 3],
    ])
  })

  test('that is written anew from its first entry is told by the id that its entries bear', async () => {
    await takeIn(theirs)
    const { others } = await plan(await text(fileParts({}, await forged(theirEntries, 1))))
    expect(others[0]?.differs).toMatch(/^Entry 1 of the file is not entry 1 of theirs\.json/)
  })

  test.each([
    [
      'a changed entry',
      async (all: Entry[]) => [all[0]!, { ...all[1]!, at: '2020-01-01T00:00:00.000Z' }, all[2]!],
      'Entry 2 is not what was written',
    ],
    ['a missing entry', async (all: Entry[]) => [all[0]!, all[2]!], 'Entry 2 is missing'],
    ['a missing beginning', async (all: Entry[]) => all.slice(1), 'Entry 1 is missing'],
    ['entries in another order', async (all: Entry[]) => [all[0]!, all[2]!, all[1]!], 'Entry 2 is missing'],
    [
      'an entry with a seal of its own',
      async (all: Entry[]) => [all[0]!, (await forged(all, 2))[1]!, all[2]!],
      'Entry 3 does not follow the entry before it',
    ],
  ])('with %s is told and not taken in, even when the person says so', async (_, damage, told) => {
    const file = await text(fileParts({}, await damage(theirEntries)))
    const planned = await takeIn(file, 'x.json', ({ others }) => others.map((one) => ({ planned: one, name: 'x' })))
    expect(planned.others).toMatchObject([{ refused: expect.stringContaining(told) }])
    expect(await allOthers()).toEqual([])
  })

  test('is named anew, put away and brought back', async () => {
    await takeIn(theirs)
    const { key } = (await listOthers())[0]!
    await renameOther(key, 'Second van')
    expect(await listOthers()).toMatchObject([{ name: 'Second van' }])
    await putAwayOther(key, true)
    expect(await listOthers()).toEqual([])
    expect(await listRows({ book: everyBook })).toHaveLength(1)
    await takeIn(longer)
    expect(await listOthers()).toMatchObject([{ name: 'Second van', count: 4 }])
  })
})

describe('a book that was begun anew', () => {
  test('has the lost one beside it: both are listed, and entries that both have once', async () => {
    await otherMachine()
    await takeIn(theirs, 'backup.json')
    // The newest two were lost with the machine; the book went on from its third entry.
    await fill('after the loss')
    const planned = await takeIn(longer, 'lost book.json')
    expect(planned.others).toMatchObject([{ add: 4, shared: 3, differs: '', refused: '' }])
    const rows = await listRows({ book: everyBook })
    expect(rows.map(({ number, book }) => [number, book !== undefined])).toEqual([
      [4, false],
      [4, true],
      [3, false],
      [2, false],
      [1, false],
    ])
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
  })

  test('and is empty takes a file as its beginning, or keeps it beside when the person says so', async () => {
    await otherMachine()
    const planned = await takeIn(theirs, 'van.json', ({ others: [one] }) => [{ planned: one!, name: 'Van' }])
    expect(planned.others).toMatchObject([{ canBegin: true }])
    expect(await countEntries()).toBe(0)
    expect(await listOthers()).toMatchObject([{ name: 'Van', count: 3 }])
    await otherMachine()
    await takeIn(theirs)
    expect(await countEntries()).toBe(3)
    expect(await listOthers()).toEqual([])
  })
})

describe('a backup', () => {
  test('holds the books beside, and brings them to another machine with one’s own', async () => {
    await takeIn(theirs, 'van.json')
    await renameOther((await listOthers())[0]!.key, 'Second van')
    const [own, file] = [await entriesOf(), await text(wholeBook())]
    expect(file).toContain('"version":3')
    await otherMachine()
    await takeIn(file, 'backup.json')
    expect(await entriesOf()).toEqual(own)
    const [other] = await listOthers()
    expect(other).toMatchObject({ name: 'Second van', count: 3 })
    expect(await entriesOf(other!.key)).toEqual(theirEntries)
    // Once more changes nothing.
    const again = await plan(file)
    expect(again.others).toMatchObject([{ add: 0, same: 3 }])
  })

  test('whose book beside was cut short is told', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    const file = await text(fileParts({ books: [other!] }, [{ entry: theirEntries[0]!, book: other!.key }]))
    await otherMachine()
    expect((await plan(file)).others).toMatchObject([
      { refused: 'The file has 1 entries of this book, and says that there are 3: they are not taken in.' },
    ])
  })

  test('without books beside is of the version that earlier programs read, and says which book it is of', async () => {
    const file = await text(wholeBook())
    const [entry] = await entriesOf()
    expect(JSON.parse(file)[0].head).toMatchObject({ version: 2, book: entry!.book })
  })
})

/** The browser loses databases, as after a torn write, and starts again. */
async function restart(...lost: string[]): Promise<string> {
  await closeJournal()
  await closeDatabase()
  for (const name of lost) await deleteDB(name)
  await compareAtStart()
  const said = await found()
  return said ? foundWords(said).join(' ') : ''
}

describe('after a loss', () => {
  test('of every database the books beside are given back from their copy, and it is told', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    const said = await restart('gapsum', databaseBeside(other!.key))
    expect(said).toContain('The book van.json held 3 entries, 0 were here: its copy gave back 3.')
    expect(await listOthers()).toMatchObject([{ key: other!.key, count: 3 }])
    expect(await entriesOf(other!.key)).toEqual(theirEntries)
    expect((await listRows({ book: everyBook, text: 'weir' })).map(({ number }) => number)).toEqual([3, 2, 1])
    expect(await countEntries()).toBe(1)
  })

  test('of the copy too, what is missing is told once, with the file to take in again; that mends it', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    ownFiles.clear()
    const said = await restart(databaseBeside(other!.key))
    expect(said).toContain('The book van.json held 3 entries, 0 are here. Take van.json in again')
    ownStorage.remove('given back')
    expect(await restart()).not.toContain('van.json')
    expect((await plan(theirs)).others).toMatchObject([{ add: 3 }])
    await takeIn(theirs, 'van.json')
    expect((await listOthers()).map(({ count }) => count)).toContain(3)
    const whole = (await listOthers()).find(({ count }) => count === 3)
    expect((await verifyBook(true, undefined, whole)).chain).toMatchObject({ ok: true, count: 3 })
  })

  test('of the copy alone it is written again', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    ownFiles.clear()
    await restart()
    expect(await restart(databaseBeside(other!.key))).toContain('its copy gave back 3')
  })
})

describe('what goes to others', () => {
  const about = { id: 'job of 3 Weir Street', name: '3 Weir Street' }
  const review = async () => {
    const parts = await Array.fromAsync(reviewParts({ ...demoJob(), id: about.id }, '0.1.0'))
    return checkReview(await readReview(new Blob(parts)))
  }

  test('a review file holds the entries of every book with the proof of its chain, and says which book they are of', async () => {
    await fill('mine too', about.name)
    await takeIn(theirs, 'van.json')
    const { entries, told } = await review()
    expect(entries).toEqual([
      { entry: 2, book: '', fits: true, message: '' },
      ...[1, 2, 3].map((entry) => ({ entry, book: 'van.json', fits: true, message: '' })),
    ])
    expect(told.map(({ about: what }) => what)).toContain('van.json: entry 3')
  })

  test('a review file tells of an entry of a book beside that was changed', async () => {
    await takeIn(theirs, 'van.json')
    const [other] = await listOthers()
    await (await database(other!.key)).put('entries', { ...theirEntries[1]!, engine: '9' } as Entry)
    const { entries } = await review()
    expect(entries.find(({ entry, book }) => entry === 2 && book === 'van.json')).toMatchObject({ fits: false })
  })

  test('a table says of each entry which book it stands in', async () => {
    await takeIn(theirs, 'van.json')
    const names = new Map((await listOthers()).map(({ key, name }) => [key, name]))
    const csv = await text(csvParts(entriesShown({ book: everyBook }), names))
    const [header, ...rows] = parse<string[]>(csv.replace(/^\uFEFF/, ''), { skipEmptyLines: true }).data
    const at = (name: string) => header!.indexOf(name)
    expect(new Set(rows.map((row) => `${row[at('Entry')]} ${row[at('Book beside')]}`))).toEqual(
      new Set(['1 ', '3 van.json', '2 van.json', '1 van.json']),
    )
  })
})

test('a check goes on from the one before, and sees what was written anew behind it', async () => {
  await fill('two')
  const { chain } = await verifyBook(false)
  await fill('three')
  expect((await verifyBook(false, undefined, undefined, chain)).chain).toEqual((await verifyBook(false)).chain)
  const db = await database()
  for (const entry of await forged(await entriesOf(), 2)) await db.put('entries', entry)
  expect((await verifyBook(false, undefined, undefined, chain)).chain).toMatchObject({ ok: false, entry: 3 })
})

test('an entry that was changed in the tables of a book beside is told when it is checked', async () => {
  await takeIn(theirs)
  const [other] = await listOthers()
  const db = await database(other!.key)
  const anew = await forged(theirEntries, 1)
  for (const entry of anew) await db.put('entries', entry)
  const { chain } = await verifyBook(false, undefined, other)
  expect(chain).toMatchObject({ ok: false, entry: 3 })
  await db.put('entries', { ...theirEntries[1]!, at: '2020-01-01T00:00:00.000Z' } as Entry)
  expect((await verifyBook(false, undefined, other)).chain).toMatchObject({ ok: false })
  expect(await verify()).toMatchObject({ ok: true })
})

test('the journal of runs is not confused with the tables of books beside', () => {
  expect(databaseBeside('x').startsWith(databaseOf(''))).toBe(false)
})
