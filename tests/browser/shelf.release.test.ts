/** The shelf in a real browser: a folder is chosen, this book's entries are written into it, another book's are taken in. */
import { afterAll, beforeAll, expect, it } from 'vitest'
import { newKeys, segmentName, writeSegment } from '../../lib/book/shelf/segment.ts'
import { manyEntries } from '../book/many.ts'
import { launch, type Session } from './harness.ts'
import { bundle } from './isolated.ts'

let session: Session
beforeAll(async () => {
  session = await launch()
})
afterAll(() => session.close())

const other = '6f1c2a34-0000-4000-8000-00000000000a'

/** A segment of another book, as its browser writes it. */
async function theirs(): Promise<{ name: string; text: string }> {
  const entries = (await Array.fromAsync(manyEntries(3, 2))).flat()
  const parts = writeSegment({ book: other, name: 'Field laptop', keys: await newKeys() }, entries)
  return {
    name: segmentName({ book: other, first: 1, last: 3, hash: entries[2]!.hash }),
    text: (await Array.fromAsync(parts)).join(''),
  }
}

it('writes what is new, takes in what others wrote, and tells what is damaged', async () => {
  const book = await session.openPage('/book.html#settings')
  const { page } = book
  await page.evaluate(`${await bundle('../book/in-page.ts', 'inPage')}; inPage.write()`)
  // A folder of the origin's own stands for the one that a person chooses: the browser's dialog cannot be driven.
  await page.reload()
  // A folder of the origin's own stands for the one that a person chooses: the browser's dialog cannot be driven.
  await page.evaluate(
    `globalThis.showDirectoryPicker = async () => (await navigator.storage.getDirectory()).getDirectoryHandle('shelf', { create: true })`,
  )
  await book.wait(/Give this book a name first/)
  const field = await page.waitForSelector(`::-p-aria(What this book is called on the shelf)`)
  await field!.type('Office desktop')
  await book.click('button', 'Choose the folder')
  await book.wait(/Written to the shelf: 1 entry\./)
  const put = async (name: string, text: string) =>
    page.evaluate(
      `(async () => {
        const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('shelf')
        const file = await (await folder.getFileHandle(${JSON.stringify(name)}, { create: true })).createWritable()
        await file.write(${JSON.stringify(text)})
        await file.close()
      })()`,
    )
  const { name, text } = await theirs()
  await put(name, text.slice(0, 400))
  await book.click('button', /^Write and take in/)
  await book.wait(/Line 2 of the file is not what was written: it is not JSON\. Nothing was taken in\./)
  await put(name, text)
  await book.click('button', /^Write and take in/)
  await book.wait(/Taken in from Field laptop: 3 entries\./)
  expect(await book.text()).not.toMatch(/Nothing was taken in/)
  await book.wait(/Books beside yours/)
  await book.click('button', /^Write and take in/)
  await book.wait(/Nothing is new on either side\./)
  await page.evaluate(`location.hash = '#entries'`)
  // The list names the book that an entry stands in.
  expect(await book.wait(/Field laptop/)).toContain('never changed')
})
