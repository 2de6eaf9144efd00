/** Takes the pictures of the README from the running product: `npm run pictures`, after a build. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from 'puppeteer-core'
import { startSite, type Site } from '../pages/site/server.ts'
import { helper, launch, type Surface } from './harness.ts'
import { mapPage } from './map-page.ts'
import { bookLines, confirm, formOf, openDemo, openPlan } from './round.ts'

const folder = fileURLToPath(new URL('../pictures/', import.meta.url))

async function take(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: join(folder, `${name}.png`) })
  console.log(`tests/pictures/${name}.png`)
}

/** The demo job with the test after work open, as the popup shows it at its top. */
async function showAfter(popup: Surface): Promise<void> {
  await popup.click('button', 'after')
  await popup.wait(/Meets the limit/)
  await popup.page.evaluate(() => {
    for (const scroller of document.querySelectorAll('*')) scroller.scrollTop = 0
  })
}

async function dark(site: Site): Promise<void> {
  const session = await launch({ scale: 2, dark: true })
  const popup = await openDemo(session, await session.open(site.plain))
  await showAfter(popup)
  await take(popup.page, 'popup-dark')
  await session.close()
}

async function light(site: Site): Promise<void> {
  const session = await launch({ scale: 2 })
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
  await book.page.setViewport({ width: 1280, height: 900, deviceScaleFactor: 2 })
  await book.page.evaluate(() => scrollTo(0, 0))
  await take(book.page, 'book')
  await session.close()
}

mkdirSync(folder, { recursive: true })
const site = await startSite()
try {
  await light(site)
  await dark(site)
} finally {
  await site.close()
}
