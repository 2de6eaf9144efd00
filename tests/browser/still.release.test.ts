/**
 * Nothing moves away from under a pointer: once a section of the book is drawn, what can be pressed in it stays where it
 * is, whatever else is read from the book later. A press that began on a key and ended beside it does nothing.
 */
import type { Page } from 'puppeteer-core'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { launch, type Session } from './harness.ts'
import { bundle } from './isolated.ts'

let session: Session
beforeEach(async () => {
  session = await launch()
})
afterEach(() => session.close())

const sections = ['entries', 'jobs', 'maps', 'devices', 'limits', 'review', 'settings']

/** Notes where each control is first drawn, and each that stands elsewhere in a later frame. */
function watch(): void {
  const seen = new WeakMap<Element, string>()
  const moved: string[] = []
  Object.assign(globalThis, { moved })
  const look = () => {
    for (const one of document.querySelectorAll('main :is(button, a, input, select, summary)')) {
      const { x, y, width } = one.getBoundingClientRect()
      if (width === 0) continue
      const now = `${Math.round(x)}, ${Math.round(y + scrollY)}`
      const before = seen.get(one)
      if (before !== undefined && before !== now)
        moved.push(`${one.textContent?.trim() || one.localName}: ${before} > ${now}`)
      seen.set(one, now)
    }
    requestAnimationFrame(look)
  }
  requestAnimationFrame(look)
}

/** The reminders come last of all that is read. */
async function quiet(page: Page): Promise<void> {
  await page.waitForSelector('.reminders')
  await page.waitForFunction(() => document.querySelector('.chain')?.textContent?.includes('verified'))
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))')
}

it('keeps every control of the book where it was drawn', async () => {
  const first = await session.openPage('/book.html#limits')
  await first.page.evaluate(`${await bundle('../book/in-page.ts', 'inPage')}; inPage.write()`)
  for (const width of [1280, 480]) {
    await first.page.setViewport({ width, height: 3000 })
    for (const section of sections) {
      const { page } = await session.openPage(`/book.html#${section}`)
      await page.setViewport({ width, height: 3000 })
      await page.evaluateOnNewDocument(watch)
      await page.reload()
      await quiet(page)
      expect(await page.evaluate('moved'), `${section} at ${width} px`).toEqual([])
      await page.close()
    }
  }
})

it('says what was deleted without moving the list: the next press deletes no other job', async () => {
  const book = await session.openPage('/book.html#limits')
  await book.page.evaluate(`${await bundle('../book/in-page.ts', 'inPage')}; inPage.write()`)
  await book.page.evaluate(`location.hash = '#jobs'`)
  const find = () => book.page.$eval('.flt input', (field) => field.getBoundingClientRect().y)
  await book.get('button', /^Review file/)
  const before = await find()
  await book.click('button', /^Review file/)
  await book.wait(/The review file is written/)
  expect(await find()).toBe(before)
})

it('adds a device at a press in the very frame that the reminders come in', async () => {
  const book = await session.openPage('/book.html#limits')
  await book.page.evaluate(`${await bundle('../book/in-page.ts', 'inPage')}; inPage.write()`)
  const { page } = await session.openPage('/book.html#devices')
  await page.evaluateOnNewDocument(() => {
    const observer = new MutationObserver(() => {
      if (document.querySelector('.reminders')) Object.assign(globalThis, { due: true })
    })
    observer.observe(document, { childList: true, subtree: true })
  })
  await page.reload()
  const key = await page.waitForSelector('xpath/.//button[text()="Add a device"]')
  const box = await key?.boundingBox()
  if (!box) throw new Error('The key has no place.')
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.waitForFunction('globalThis.due')
  await page.mouse.up()
  expect(await page.waitForSelector('details[open] .rg')).not.toBeNull()
})
