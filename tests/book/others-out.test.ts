/** What goes to others of the books beside one's own, and how these are checked. */
import './own-storage.ts'
import { parse } from 'papaparse'
import { describe, expect, test } from 'vitest'
import { csvParts } from '../../lib/book/csv.ts'
import { database } from '../../lib/book/database.ts'
import { entriesShown, verify } from '../../lib/book/entries.ts'
import { listOthers } from '../../lib/book/others.ts'
import { readReview, reviewParts } from '../../lib/book/review-file.ts'
import { checkReview } from '../../lib/book/review.ts'
import { everyBook } from '../../lib/book/rows.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { verifyBook } from '../../lib/book/verify.ts'
import { entriesOf, fill, forged, takeIn, text, theirEntries, theirs } from './two-books.ts'

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
