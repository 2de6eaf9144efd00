/** File controls through the real action of the built extension: a table of the figures, and reports as PDFs. */
import { createHash } from 'node:crypto'
import type { Page } from 'puppeteer-core'
import { extractText, getDocumentProxy } from 'unpdf'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { startPlaces, type Places } from '../pages/places/server.ts'
import { helper, launch, type Session } from './harness.ts'
import { confirm, openDemo, openPlan } from './round.ts'

let session: Session
let places: Places
let page: Page

beforeAll(async () => {
  ;[session, places] = await Promise.all([launch(), startPlaces()])
})
afterEach(() => page.close())
afterAll(async () => {
  await session?.close()
  await places?.close()
})

test('a file control is bound to a table of the figures, which goes into it', async () => {
  page = await session.open(`${places.origin}/report.html`)
  await (await openDemo(session, page)).click('button', 'Map this page')
  const mapping = await helper(page)
  await mapping.click('button', /^\d+ ?Test report/)
  expect(await mapping.has('radio', 'Fixed text')).toBe(false)
  await mapping.click('radio', /as a table/)
  await mapping.type('textbox', 'Name of the file', 'Tannery Row.csv')
  await mapping.wait(/will be entered as\s+Tannery Row\.csv/)
  await mapping.click('button', 'Bind, then next')
  await mapping.wait(/1 of 2 controls bound/)
  if (await mapping.has('button', 'All controls')) await mapping.click('button', 'All controls')
  await mapping.wait(/the file Tannery Row\.csv/)
  await mapping.click('button', 'Close')
  const [line] = await confirm(await openPlan(session, page))
  expect(line).toMatchObject({ readBack: 'Tannery Row.csv', outcome: 'entered' })
  const held = await page.$eval('#report', (input) => (input as HTMLInputElement).files?.[0]?.text())
  expect(held).toMatch(/^group,item,value,unit\r\n/)
  expect(held).toMatch(/\r\nafter,CFM50,754,cfm\r\n/i)
})

test('a file control is bound to the report of a test, whose PDF goes into it and whose SHA-256 the book keeps', async () => {
  page = await session.open(`${places.origin}/report.html`)
  await (await openDemo(session, page)).click('button', 'Map this page')
  const mapping = await helper(page)
  await mapping.click('button', /^\d+ ?Test report/)
  await mapping.click('radio', /Report of the test “after”/)
  await mapping.type('textbox', 'Name of the file', 'Tannery Row.pdf')
  await mapping.click('button', 'Bind, then next')
  await mapping.wait(/1 of 2 controls bound/)
  if (await mapping.has('button', 'All controls')) await mapping.click('button', 'All controls')
  await mapping.click('button', 'Close')
  const ui = await openPlan(session, page)
  await ui.wait(/\d+ kB, made from the job as it stands/)
  const [line] = await confirm(ui)
  expect(line).toMatchObject({ readBack: 'Tannery Row.pdf', outcome: 'entered' })
  const held = await page.$eval('#report', async (input) => {
    const file = (input as HTMLInputElement).files?.[0]
    return { type: file?.type, bytes: [...new Uint8Array((await file?.arrayBuffer()) ?? new ArrayBuffer(0))] }
  })
  expect(held.type).toBe('application/pdf')
  // Read with another library: PDF.js.
  const { text, totalPages } = await extractText(
    await getDocumentProxy(Uint8Array.from(held.bytes), { verbosity: 0 }),
    { mergePages: true },
  )
  expect(totalPages).toBe(1)
  expect(text).toMatch(/14 Tannery Row, Marrowby.*Test: after/)
  expect(text).toMatch(/754/)
  await ui.click('button', 'Open book')
  const book = await session.waitForPage('/book.html')
  // Computed anew by Node's own library, of what the page holds.
  const sum = createHash('sha256').update(Uint8Array.from(held.bytes)).digest('hex')
  await book.wait(new RegExp(`kB, SHA-256 ${sum.slice(0, 16)}`))
  await book.page.close()
})

test('mapping a page with a file control leads to its plan with the report at hand', async () => {
  page = await session.open(`${places.origin}/report.html`)
  await (await openDemo(session, page)).click('button', 'Map this page')
  const mapping = await helper(page)
  await mapping.click('button', /^\d+ ?Test report/)
  await mapping.click('radio', /Report of all tests/)
  await mapping.click('button', 'Bind, then next')
  await mapping.wait(/1 of 2 controls bound/)
  if (await mapping.has('button', 'All controls')) await mapping.click('button', 'All controls')
  await mapping.click('button', /^Show the plan/)
  const ui = await helper(page)
  const [line] = await confirm(ui)
  expect(line).toMatchObject({ readBack: 'report.pdf', outcome: 'entered' })
  const held = await page.$eval('#report', async (input) => {
    const file = (input as HTMLInputElement).files?.[0]
    return [...new Uint8Array((await file?.arrayBuffer()) ?? new ArrayBuffer(0))]
  })
  const { totalPages } = await extractText(await getDocumentProxy(Uint8Array.from(held), { verbosity: 0 }))
  expect(totalPages).toBe(3)
})
