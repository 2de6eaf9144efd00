/** Whoever writes into the database by a script is told of in words; who writes all of it anew, by what is kept apart. */
import { ownStorage } from './own-storage.ts'
import { deleteDB } from 'idb'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { attach } from '../../lib/book/attachments.ts'
import { seal } from '../../lib/book/chain.ts'
import { closeDatabase, database } from '../../lib/book/database.ts'
import { countEntries, getHead } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { headName } from '../../lib/book/journal/keep.ts'
import { closeJournal, databaseOf } from '../../lib/book/journal/place.ts'
import { found } from '../../lib/book/journal/told.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { rowOf } from '../../lib/book/rows.ts'
import { verifyBook } from '../../lib/book/verify.ts'
import { findingWords } from '../../lib/view/book/finding-words.ts'
import { foundWords } from '../../lib/view/parts/given-back.tsx'
import { context, fakeFill, fakeLine } from './fake.ts'
import './fresh.ts'

type Db = Awaited<ReturnType<typeof database>>

const photo = Uint8Array.from([0xff, 0xd8, 0xff, 7])
const about = { id: 'job-1', name: '14 Tannery Row' }

/** Four fills and a photo. */
async function begin(): Promise<void> {
  for (const id of ['a', 'b', 'c', 'd']) {
    await startFill(fakeFill(id), context)
    await addFillLine(id, fakeLine('flow'))
    await endFill(id)
  }
  const file = { name: 'gauge.jpg', size: 4, arrayBuffer: async () => photo.slice().buffer }
  await attach(file, { job: about, text: '' }, '0.2.0')
}

const change = async (db: Db, number: number, by: object) => {
  await db.put('entries', { ...(await db.get('entries', number))!, ...by } as Entry)
}

const later = { at: '2020-01-01T00:00:00.000Z' }

/** Changes an entry and seals it and all after it anew, with count and rows, as somebody does who knows the code. */
async function writeAnew(db: Db, from: number): Promise<void> {
  let previous = (await db.get('entries', from - 1))?.hash ?? ''
  for (const entry of await db.getAll('entries', IDBKeyRange.lowerBound(from))) {
    const changed = { ...entry, job: { ...entry.job, name: '15 Tannery Row' }, previous }
    const sealed = { ...changed, hash: await seal(changed) } as Entry
    previous = sealed.hash
    await db.put('entries', sealed)
    await db.put('rows', rowOf(sealed))
    await db.put('single', { number: sealed.number, hash: sealed.hash }, 'head')
  }
}

const tables = ['entries', 'rows', 'words', 'fills', 'lines', 'blobs'] as const

/** What the book says when it is checked as a person asks for it. */
async function checked(): Promise<string[]> {
  const verified = await verifyBook(true)
  return [...(verified.chain.ok ? [] : [verified.chain.message]), ...findingWords(verified)]
}

beforeEach(async () => {
  await closeJournal()
  ownStorage.clear()
  await begin()
})
afterEach(closeJournal)

const cases: [what: string, tamper: (db: Db) => Promise<unknown>, told: string][] = [
  [
    'an entry',
    (db) => change(db, 2, later),
    'Entry 2 is not what was written: its fingerprint does not fit its content.',
  ],
  [
    'an entry with a seal of its own',
    async (db) => {
      await change(db, 2, later)
      await change(db, 2, { hash: await seal((await db.get('entries', 2))!) })
    },
    'Entry 3 does not follow the entry before it.',
  ],
  ['an entry that is removed', (db) => db.delete('entries', 3), 'Entry 3 is missing.'],
  [
    'entries that are cut off',
    (db) => db.delete('entries', 5),
    'Entry 5 and what came after it are missing from the end of the book.',
  ],
  [
    'entries that are cut off, and the count with them',
    async (db) => {
      await db.delete('entries', 5)
      const { number, hash } = (await db.get('entries', 4))!
      await db.put('single', { number, hash }, 'head')
    },
    'Entry 5 and what came after it are missing from the end of the book.',
  ],
  [
    'a row of the list',
    async (db) => db.put('rows', { ...(await db.get('rows', 1))!, name: 'Nobody' } as never),
    'The list did not show these entries as they were written: 1. Their lines were made again from the entries.',
  ],
  [
    'a row that is removed',
    (db) => db.delete('rows', 2),
    'The list did not show these entries as they were written: 2. Their lines were made again from the entries.',
  ],
  [
    'the words of the search',
    (db) => db.clear('words'),
    'The search did not find these entries by all their words: 1, 2, 3, 4, 5. It finds them again.',
  ],
  [
    'an attachment',
    async (db) => {
      const [blob] = await db.getAll('blobs')
      await db.put('blobs', { ...blob!, bytes: Uint8Array.from([0xff, 0xd8, 0xff, 8]).buffer })
    },
    'Entry 5: gauge.jpg is not what was attached: its fingerprint is another. Take it from an earlier backup.',
  ],
  [
    'an attachment that is removed',
    (db) => db.clear('blobs'),
    'Entry 5: gauge.jpg is not in this book, only its fingerprint. Look for it in an earlier backup.',
  ],
  [
    'the newest fingerprint',
    (db) => db.put('single', { number: 5, hash: '00' }, 'head'),
    'Entry 5 is not what was written: its fingerprint does not fit its content.',
  ],
  [
    'the count, upwards',
    (db) => db.put('single', { number: 9, hash: '00' }, 'head'),
    'Entry 6 and what came after it are missing from the end of the book.',
  ],
  [
    'the count, downwards',
    async (db) => db.put('single', { number: 3, hash: (await db.get('entries', 3))!.hash }, 'head'),
    'Entry 4 is here, and the book counts only 3: its count was changed.',
  ],
  [
    'the count, removed',
    (db) => db.delete('single', 'head'),
    'Entry 1 is here, and the book counts only 0: its count was changed.',
  ],
  [
    'everything deleted',
    async (db) => {
      for (const table of tables) await db.clear(table)
      await db.delete('single', 'head')
    },
    'Entry 1 and what came after it are missing from the end of the book.',
  ],
  [
    'entries from the second on written anew, with rows and count',
    (db) => writeAnew(db, 2),
    'Entry 2 fits the entries beside it, and is not the one whose fingerprint was kept apart from them: the book was written anew.',
  ],
  [
    'the same, and the fingerprint in the extension’s own storage',
    async (db) => {
      await writeAnew(db, 2)
      await ownStorage.set({ [headName]: await getHead() })
    },
    'Entry 2 fits the entries beside it, and is not the one whose fingerprint was kept apart from them: the book was written anew.',
  ],
]

describe('changed inside the database and told when the book is checked:', () => {
  test('nothing', async () => {
    expect(await checked()).toEqual([])
  })

  test.each(cases)('%s', async (_, tamper, told) => {
    await tamper(await database())
    expect(await checked()).toContain(told)
  })
})

/** What is said after a start of the browser. */
async function start(): Promise<string> {
  await closeDatabase()
  await compareAtStart()
  const said = await found()
  return said ? foundWords(said).join(' ') : ''
}

describe('told at the next start of the browser, without anybody asking:', () => {
  test('everything deleted, which is given back', async () => {
    const db = await database()
    for (const table of tables) await db.clear(table)
    expect(await start()).toContain('This book held 5 entries, 0 were here: the second copy gave back 5.')
    expect(await countEntries()).toBe(5)
  })

  test('the whole database deleted', async () => {
    await closeDatabase()
    await deleteDB('gapsum')
    expect(await start()).toContain('This book held 5 entries, 0 were here: the second copy gave back 5.')
  })

  test('entries written anew', async () => {
    await writeAnew(await database(), 1)
    expect(await start()).toBe(
      'Entry 5 is not the one whose fingerprint was kept apart from the book: its entries were written anew. Check the chain in the book, and compare the book with an earlier export.',
    )
  })
})

test('who writes anew all that the extension keeps is told by a fingerprint alone that was kept elsewhere', async () => {
  const before = await verifyBook(true)
  const noted = before.chain.ok && before.chain.hash
  await writeAnew(await database(), 1)
  await closeJournal()
  await deleteDB(databaseOf(''))
  ownStorage.clear()
  const { chain } = await verifyBook(true)
  expect(chain).toMatchObject({ ok: true, count: 5 })
  expect(chain.ok && chain.hash).not.toBe(noted)
})
