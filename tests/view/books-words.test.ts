/** What is said of the books that a file brings. */
import { ownStorage } from '../book/own-storage.ts'
import { IDBFactory } from 'fake-indexeddb'
import { expect, test } from 'vitest'
import { entriesForwards } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { planImport } from '../../lib/book/import.ts'
import { fileParts, openBookFile } from '../../lib/book/json.ts'
import type { Entry } from '../../lib/book/schema.ts'
import { booksWords } from '../../lib/view/book/beside-fields.tsx'
import { context, fakeFill, fakeLine } from '../book/fake.ts'
import { reopen } from '../book/fresh.ts'

async function fill(id: string): Promise<void> {
  await startFill(fakeFill(id), context)
  await addFillLine(id, fakeLine('flow'))
  await endFill(id)
}

async function wordsOf(entries: Entry[]): Promise<string[]> {
  const parts = await Array.fromAsync(fileParts({}, entries))
  return booksWords(await planImport(await openBookFile(new Blob(parts))))
}

async function emptyBook(): Promise<void> {
  await reopen()
  globalThis.indexedDB = new IDBFactory()
  ownStorage.clear()
}

test('of a file whose chain does not fit one sentence says so, and one more where it is another book too', async () => {
  await fill('one')
  await fill('two')
  const [first, second] = await Array.fromAsync(entriesForwards())
  const changed = [first!, { ...second!, at: '2020-01-01T00:00:00.000Z' }]
  await emptyBook()
  expect(await wordsOf(changed)).toEqual([expect.stringMatching(/^Entry 2 is not what was written.* cannot begin/)])
  await fill('mine')
  expect(await wordsOf(changed)).toEqual([
    expect.stringMatching(/two books/),
    expect.stringMatching(/^Entry 2 is not what was written.* beside this one either/),
  ])
})
