/** Takes the pictures of the README from the running product: `npm run pictures`, after a build. One of every view. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from 'puppeteer-core'
import { startSite, type Site } from '../pages/site/server.ts'
import { eightPoints } from '../report/report-fixtures.ts'
import { helper, launch, whole, type Session, type Surface } from './harness.ts'
import { mapPage } from './map-page.ts'
import { pastePoints } from './paste-points.ts'
import { picturePdf } from './picture-pdf.ts'
import { savedPdf } from './saved-pdf.ts'
import { bookLines, confirm, formOf, openDemo, openPlan } from './round.ts'
import { stillPicture } from './still-picture.ts'
import { example, withWidget } from './widget-pages.ts'

const folder = fileURLToPath(new URL('../pictures/', import.meta.url))
const scale = 1.5

async function take(page: Page, name: string): Promise<void> {
  writeFileSync(join(folder, `${name}.png`), await stillPicture(page))
  console.log(`tests/pictures/${name}.png`)
}

const size = (page: Page, width: number, height: number): Promise<void> =>
  page.setViewport({ width, height, deviceScaleFactor: scale })

const toTop = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const scroller of document.querySelectorAll('*')) scroller.scrollTop = 0
  })

/** The demo job with the test after work open, as the popup shows it at its top. */
async function showAfter(popup: Surface): Promise<void> {
  await popup.click('button', 'after')
  await popup.wait(/Meets the limit/)
  await toTop(popup.page)
}

async function dark(site: Site): Promise<void> {
  const session = await launch({ scale, dark: true })
  const popup = await openDemo(session, await session.open(site.plain))
  await showAfter(popup)
  await take(popup.page, 'popup-dark')
  await session.close()
}

async function firstScreen(session: Session): Promise<void> {
  const popup = await session.openPage('/popup.html')
  await size(popup.page, 400, 600)
  await popup.wait(/Open the demo job/)
  await take(popup.page, 'first-screen')
  await popup.page.close()
}

/** The calculator as the person put it beside a mapped page, with the test of the ducts. */
async function sidebar(session: Session, page: Page): Promise<void> {
  const popup = await session.openPopup(page)
  await popup.get('button', 'Keep beside the page')
  const opened = session.browser.waitForTarget((target) => target.url().endsWith('/sidepanel.html'))
  await popup.click('button', 'Keep beside the page')
  const beside = await whole(await (await opened).asPage(), 'The sidebar')
  await size(beside.page, 420, 900)
  await beside.wait(/14 Tannery Row/)
  await beside.wait(/\d+ bindings/)
  await beside.click('button', 'duct system 1')
  await beside.wait(/CFM25/)
  await toTop(beside.page)
  await take(beside.page, 'sidebar')
  await beside.page.close()
}

/** The first page of the report as a PDF. */
async function pdf(session: Session): Promise<void> {
  const book = await session.openPage('/book.html#report?job=demo-job&test=demo-after')
  await book.get('button', 'Save PDF')
  const bytes = await savedPdf(book.page)
  await book.page.close()
  await picturePdf(bytes, join(folder, 'report-pdf.png'))
  console.log('tests/pictures/report-pdf.png')
}

/** A regression in the popup, with its plot. */
async function plot(site: Site): Promise<void> {
  const session = await launch({ scale })
  const popup = await openDemo(session, await session.open(site.plain))
  await popup.click('button', 'after')
  await popup.fold('setup')
  await popup.choose('Procedure', /^ASTM E779/)
  await popup.fold('setup')
  const lines = eightPoints().test.sheet.points.map(({ pressure, flow, range }) => [pressure, flow, range].join('\t'))
  await pastePoints(popup.page, lines)
  await popup.click('button', 'Dismiss')
  await popup.fold('plot')
  await popup.get('group', /Leakage flow against pressure/)
  await popup.page.$eval('#plot', (section) => section.scrollIntoView())
  await take(popup.page, 'popup-plot')
  await session.close()
}

async function practice(session: Session): Promise<void> {
  const page = await session.openPage('/practice.html')
  await size(page.page, 1000, 760)
  await page.wait(/CFM/)
  await take(page.page, 'practice')
  await page.page.close()
}

const heights: Record<string, number> = { entries: 330, maps: 260, report: 1400 }

async function bookViews(session: Session): Promise<void> {
  for (const [hash, words] of [
    ['entries', /Chain verified/],
    ['maps', /Form LC-7|bindings?/],
    ['limits', /limit/i],
    ['settings', /Units/],
    ['report?job=demo-job&test=demo-after', /Tannery Row/],
  ] as const) {
    const book = await session.openPage(`/book.html#${hash}`)
    const name = hash.replace(/\?.*/, '')
    await size(book.page, 1100, heights[name] ?? 760)
    await book.wait(words)
    await new Promise((done) => setTimeout(done, 800))
    await take(book.page, name === 'entries' ? 'book' : `book-${name}`)
    await book.page.close()
  }
}

async function widgets(session: Session, site: Site): Promise<void> {
  for (const [name, url] of Object.entries(site.widget)) {
    if (name !== 'themed' && name !== 'plain') continue
    const page = await session.open(url)
    await size(page, 900, 900)
    await withWidget(page, (widget, value) => void (widget.value = value), { points: example.points })
    await new Promise((done) => setTimeout(done, 300))
    await take(page, `widget-${name}`)
    await page.close()
  }
}

async function light(site: Site): Promise<void> {
  const session = await launch({ scale })
  await firstScreen(session)
  const form = formOf(site, 'plain')
  const page = await session.open(form.url)
  const popup = await openDemo(session, page)
  await showAfter(popup)
  await take(popup.page, 'popup-light')
  await popup.click('button', 'Map this page')
  const mapping = await helper(page)
  await mapPage(page, mapping, form, async () => {
    await mapping.click('button', /^15 ?CFM at 50 Pa/)
    await mapping.wait(/What goes into/)
    await page.evaluate(() => scrollTo(0, 0))
    await take(page, 'mapping')
    await mapping.click('button', 'All controls')
  })
  const ui = await openPlan(session, page)
  await page.evaluate(() => scrollTo(0, 0))
  await take(page, 'plan')
  await confirm(ui)
  await take(page, 'receipt')
  await ui.click('button', 'Open book')
  const { book } = await bookLines(session)
  await size(book.page, 1100, 900)
  await toTop(book.page)
  await take(book.page, 'book-entry')
  await book.page.close()
  await page.bringToFront()
  await sidebar(session, page)
  await practice(session)
  await bookViews(session)
  await pdf(session)
  await widgets(session, site)
  await session.close()
}

mkdirSync(folder, { recursive: true })
const site = await startSite()
try {
  await light(site)
  await plot(site)
  await dark(site)
} finally {
  await site.close()
}
