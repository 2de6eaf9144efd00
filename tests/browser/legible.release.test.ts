/** No text is cut off, broken inside a word, or lies over other text, in any part of any view, in both languages. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Page } from 'puppeteer-core'
import { startSite, type Site } from '../pages/site/server.ts'
import { eightPoints } from '../report/report-fixtures.ts'
import { launch, type Session, type Surface } from './harness.ts'
import { bundle } from './isolated.ts'
import { illegible } from './legible.ts'
import { pastePoints } from './paste-points.ts'
import { example, withWidget } from './widget-pages.ts'

const read = (page: Page): Promise<string[]> => page.evaluate(illegible as () => string[])

/** Opens all that folds, also inside others, until nothing is left to open. */
async function openAll(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const folded = document.querySelectorAll<HTMLElement>(
      'main details:not([open]) > summary, .fg-row button[aria-expanded=false], .panel details:not([open]) > summary',
    )
    for (const one of folded) one.click()
    return folded.length === 0
  })
  await settled(page)
}

/** Until the page has been still for a while: parts of it are read when they are opened. */
const settled = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const still = () => {
          seen.disconnect()
          resolve()
        }
        let timer = setTimeout(still, 400)
        const seen = new MutationObserver(() => {
          clearTimeout(timer)
          timer = setTimeout(still, 400)
        })
        seen.observe(document, { subtree: true, childList: true, attributes: true, characterData: true })
      }),
  )

const openTest = (view: Surface, name: string) =>
  view.page.$$eval(
    '.tests button:not([aria-current])',
    (tabs, text) => (tabs.find((tab) => tab.textContent === text) as HTMLElement | undefined)?.click(),
    name,
  )

const sections = [
  'jobs',
  'entries',
  'maps',
  'devices',
  'limits',
  'review',
  'settings',
  'report?job=demo-job&test=demo-after',
]

describe.each([
  ['en-US', /Open the demo job/, 'after', 36],
  ['es', /Abrir el trabajo/, 'después', 72],
  ['fr', /Ouvrir le dossier/, 'après', 72],
  ['de', /Beispielauftrag öffnen/, 'nachher', 72],
])('in %s', (language, demo, after, tall) => {
  let session: Session
  let site: Site
  beforeAll(async () => {
    ;[session, site] = await Promise.all([launch({ language }), startSite()])
  })
  afterAll(async () => {
    await session?.close()
    await site?.close()
  })

  test('the popup at its own width, from its first screen on', async () => {
    const view = await session.openPopup(await session.open(site.plain))
    await view.get('button', demo)
    expect.soft(await read(view.page), 'first screen').toEqual([])
    await view.click('button', demo)
    await view.page.waitForSelector('.fg-row')
    await openTest(view, after)
    await settled(view.page)
    // A regression has the most to draw.
    await openAll(view.page)
    await (await view.page.waitForSelector('#setup select:has([value=astm-e779])'))!.select('astm-e779')
    const points = eightPoints().test.sheet.points.map(({ pressure, flow, range }) =>
      [pressure, flow, range].join('\t'),
    )
    await pastePoints(view.page, points)
    await view.page.waitForSelector('#plot')
    for (const tab of await view.page.$$eval('.tests button', (all) => all.map((one) => one.textContent))) {
      if (tab.startsWith('+')) continue
      await openTest(view, tab)
      await openAll(view.page)
      expect.soft(await read(view.page), tab).toEqual([])
    }
    const tests = await view.page.$eval('.tests', (row) => row.getBoundingClientRect().height)
    expect.soft(tests, 'px that the tests of the job take').toBeLessThanOrEqual(tall)
    await view.close()
  })

  test('the sidebar at 320 px, with each of its panels', async () => {
    const view = await session.openPage('/sidepanel.html')
    await view.page.setViewport({ width: 320, height: 900 })
    await view.page.waitForSelector('.fg-row')
    for (const tab of await view.page.$$eval('.tests button', (all) => all.map((one) => one.textContent))) {
      if (tab.startsWith('+')) continue
      await openTest(view, tab)
      await openAll(view.page)
      expect.soft(await read(view.page), tab).toEqual([])
    }
    for (const panel of ['.who', '.tests [aria-current]', '.tests :not([aria-current])[aria-expanded]']) {
      await view.page.click(panel)
      await openAll(view.page)
      expect.soft(await read(view.page), panel).toEqual([])
    }
    await view.close()
  })

  // What two languages show of the book's sections holds for the others; the report has the most words.
  const shown = ['en-US', 'es'].includes(language) ? sections : sections.slice(-1)
  test.each(shown)('the section %s of the book at 200 percent and at 320 px', async (hash) => {
    const book = await session.openPage(`/book.html#${hash}`)
    await book.page.waitForSelector('main > *')
    for (const width of [640, 320]) {
      await book.page.setViewport({ width, height: 900, deviceScaleFactor: 2 })
      await openAll(book.page)
      expect.soft(await read(book.page), `${width} px`).toEqual([])
    }
    await book.close()
  })

  test('the filters of the entries and Export stand in one row of 1,100 px, its scroll bar taken off', async () => {
    const { page } = await session.openPage('/book.html#limits')
    await page.evaluate(`${await bundle('../book/in-page.ts', 'made')}; made.write()`)
    await page.setViewport({ width: 1085, height: 900 })
    await page.evaluate('location.hash = "#entries"')
    await page.waitForSelector('.flt')
    const ends = await page.$$eval('.flt > *', (all) =>
      all.map((one) => Math.round(one.getBoundingClientRect().bottom)),
    )
    expect(ends.length).toBeGreaterThan(8)
    expect(new Set(ends).size).toBe(1)
    await page.close()
  })

  // The site has a page with the widget in two languages.
  test.runIf(['en-US', 'es'].includes(language))('the widget at 320 px', async () => {
    const page = await session.open(language === 'es' ? site.widget.spanish : site.widget.form)
    await page.setViewport({ width: 320, height: 900 })
    await withWidget(page, (widget, value) => void (widget.value = value), {
      ...example,
      floorArea: '1090',
      envelopeArea: '2600',
    })
    await page.waitForSelector('#w >>> .fg-row')
    await withWidget(page, async ({ shadowRoot }) => {
      for (let turn = 0; turn < 4; turn++) {
        for (const one of shadowRoot!.querySelectorAll<HTMLElement>(
          'details:not([open]) > summary, .fg-row button[aria-expanded=false]',
        ))
          one.click()
        await new Promise((done) => requestAnimationFrame(done))
      }
    })
    await settled(page)
    expect(await (await page.waitForSelector('#w'))!.evaluate(illegible as () => string[])).toEqual([])
    await page.close()
  })
})
