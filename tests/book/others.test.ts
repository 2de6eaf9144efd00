/** Books of others beside one's own: taken in from a file, listed, searched, never written to. */
import './own-storage.ts'
import { describe, expect, test } from 'vitest'
import { databaseBeside } from '../../lib/book/database.ts'
import { countEntries, entriesShown, getEntry, verify } from '../../lib/book/entries.ts'
import { databaseOf } from '../../lib/book/journal/place.ts'
import { fileParts, wholeBook } from '../../lib/book/json.ts'
import { addNote, wholeTimeline } from '../../lib/book/notes.ts'
import { allOthers, listOthers, putAwayOther, renameOther } from '../../lib/book/others.ts'
import { everyBook, type Filter } from '../../lib/book/rows.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { listRows, rowsDue } from '../../lib/book/search.ts'
import { verifyBook } from '../../lib/book/verify.ts'
import { entriesOf, fill, forged, longer, otherMachine, plan, takeIn, text, theirEntries, theirs } from './two-books.ts'

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

const kept = async (filter: Filter) =>
  (await listRows({ ...filter, book: everyBook, order: 'kept shortest' })).map(({ number, book = '' }) => [
    number,
    book === '' ? 'own' : 'beside',
  ])

const dueUntil = async (day: string) =>
  (await rowsDue(day)).map(({ number, book = '' }) => [number, book === '' ? 'own' : 'beside'])

describe('what is due', () => {
  const about = { id: 'job of 3 Weir Street', name: '3 Weir Street' }
  const followUp = (of: number, due: string, keepUntil = '') =>
    addNote(
      {
        kind: 'follow-up',
        job: about,
        of,
        status: 'submitted',
        reason: '',
        confirmation: '',
        due,
        keepUntil,
        text: '',
      },
      '0.1.0',
    )

  test('to be kept until a day, said of a shared entry in a book beside alone, is listed with that book', async () => {
    await otherMachine()
    await takeIn(theirs, 'backup.json')
    await followUp(2, '', '2027-03-05')
    const shared = await text(wholeBook())
    await followUp(3, '', '2027-03-02')
    const lost = await text(wholeBook())
    await otherMachine()
    await takeIn(shared, 'backup.json')
    await followUp(1, '2026-03-09')
    await takeIn(lost, 'lost.json')
    expect(await kept({ keptTo: '2027-12-31' })).toEqual([
      [3, 'beside'],
      [2, 'own'],
    ])
    expect(await kept({ kept: true })).toHaveLength(2)
    expect(await kept({ keptTo: '2027-03-04' })).toEqual([[3, 'beside']])
    // What one's own book says of it stands: it is not listed by the day of the other.
    await followUp(3, '', '2035-01-01')
    expect(await kept({ keptTo: '2027-12-31' })).toEqual([[2, 'own']])
  })

  test('in a book beside is reminded of too, with that book; what both have is once', async () => {
    await otherMachine()
    await takeIn(theirs, 'backup.json')
    await followUp(2, '2026-03-05')
    const shared = await text(wholeBook())
    await followUp(3, '2026-03-02')
    const lost = await text(wholeBook())
    await otherMachine()
    await takeIn(shared, 'backup.json')
    await followUp(1, '2026-03-09')
    await takeIn(lost, 'lost.json')
    expect(await dueUntil('2026-03-31')).toEqual([
      [3, 'beside'],
      [2, 'own'],
      [1, 'own'],
    ])
    expect(await dueUntil('2026-03-04')).toEqual([[3, 'beside']])
    const [other] = await listOthers()
    await putAwayOther(other!.key, true)
    expect(await dueUntil('2026-03-04')).toEqual([])
  })
})

test('the journal of runs is not confused with the tables of books beside', () => {
  expect(databaseBeside('x').startsWith(databaseOf(''))).toBe(false)
})
