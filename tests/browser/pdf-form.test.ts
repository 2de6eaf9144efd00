/** The page for PDF forms in the built extension: the whole round in Chromium, and what it refuses. */
import { createHash } from 'node:crypto'
import type { Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { plainForm, type Form } from '../pdf/forms.ts'
import { launch, type Session } from './harness.ts'
import { confirm, drop, mapForm, openForm, problemsOf, savedForm } from './pdf-round.ts'
import { bookLines } from './round.ts'

let session: Session
let form: Form
let page: Page
const faults: string[] = []

beforeAll(async () => {
  session = await launch()
  form = await plainForm()
  page = await session.open(`${session.origin}/pdf-form.html`)
  page.on('pageerror', (error) => faults.push(String(error)))
})
afterAll(async () => {
  await session.close()
})

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

test.each([
  ['letter.pdf', 'Dear office', /is not a PDF/],
  ['cut.pdf', '', /cut off/],
])('%s is refused in words, and the page goes on', async (name, text, words) => {
  const bytes = text ? new TextEncoder().encode(text) : form.bytes.slice(0, 9000)
  await drop(page, name, bytes)
  await page.waitForFunction((said) => document.querySelector('[role=alert]')?.textContent?.includes(said), {}, name)
  expect(await page.$eval('[role=alert]', (alert) => alert.textContent)).toMatch(words)
})

test('a form is mapped, filled, saved, and found in the book; the next copy of it is filled at once', async () => {
  await openForm(page, 'LC-7P.pdf', form.bytes)
  const ui = await mapForm(session, page)
  const receipt = await confirm(ui)
  expect(receipt.length).toBeGreaterThanOrEqual(12)
  await page.waitForFunction(() => /read back from the new file/.test(document.body.textContent ?? ''))
  const { name, bytes } = await savedForm(page)
  expect(name).toMatch(/^LC-7P, 14 Tannery Row.*\.pdf$/)
  const labels = Object.fromEntries(Object.entries(form.called).map(([field, [label]]) => [field, label]))
  expect(problemsOf(bytes, receipt, labels)).toEqual([])
  expect(Buffer.compare(bytes.subarray(0, form.bytes.length), form.bytes)).toBe(0)

  await ui.click('button', 'Open book')
  const { book, lines } = await bookLines(session)
  expect(lines.map(({ control, intended, readBack }) => [control, intended, readBack])).toEqual(
    receipt.map(({ control, intended, readBack }) => [control, intended, readBack]),
  )
  const text = await book.text()
  for (const said of [name, 'LC-7P.pdf', hash(bytes).slice(0, 16), hash(form.bytes).slice(0, 16)])
    expect(text).toContain(said)
  await book.page.close()

  // Another copy of the same form, under another name, in a new tab.
  const next = await session.open(`${session.origin}/pdf-form.html`)
  await openForm(next, 'downloaded (3).pdf', form.bytes)
  const popup = await session.openPopup(next)
  await popup.wait(/\d+ (bindings?|of \d+ left)|Form LC-7P/)
  await popup.click('button', 'Fill this page')
  const again = await session.helper(next)
  await again.wait(/Nothing is typed until you confirm/)
  await confirm(again)
  const second = await savedForm(next)
  expect(second.name).toMatch(/^downloaded \(3\), 14 Tannery Row/)
  expect(problemsOf(second.bytes, [], labels)).toEqual([])
  await next.close()
  expect(faults).toEqual([])
})
