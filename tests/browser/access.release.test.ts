/** Every view against the rules of axe-core, in light and dark. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Browser } from 'puppeteer-core'
import { helperViolations, violations } from './axe.ts'
import { besideSite } from './beside-site.ts'
import { launch, type Surface } from './harness.ts'
import { confirm, openDemo } from './round.ts'
import { example, open as openPlain, visit, withWidget } from './widget-pages.ts'

const at = besideSite()

/** Opens every part that can be opened, also those inside others. */
async function openAll(view: Surface): Promise<void> {
  for (let turn = 0; turn < 3; turn++) {
    await view.page.evaluate(async () => {
      for (const summary of document.querySelectorAll<HTMLElement>('details:not([open]) > summary')) summary.click()
      await new Promise((done) => setTimeout(done, 300))
    })
  }
}

const inPage = (page: Surface['page'], column: string, text: string): Promise<void> =>
  page.type(`[data-row="0"][data-column="${column}"]`, text)

describe('the calculator', () => {
  it('first screen, empty job, and a cell that is no number', async () => {
    const fresh = await launch()
    const page = await fresh.open(at.site.plain)
    const popup = await fresh.openPopup(page)
    await popup.wait(/From readings to a record/)
    expect.soft(await violations(popup.page), 'first screen').toEqual([])
    await popup.click('button', 'Start a job')
    await popup.get('textbox', 'House pressure, point 1, Pa')
    expect.soft(await violations(popup.page), 'empty job').toEqual([])
    await inPage(popup.page, 'pressure', 'fifty')
    await inPage(popup.page, 'flow', '4e')
    await popup.finding()
    expect.soft(await violations(popup.page), 'a cell that is no number').toEqual([])
    await fresh.close()
  })

  it.each(['popup', 'sidepanel'])('the demo job in the %s with every part open', async (place) => {
    const page = await at.session.open(at.site.plain)
    const view = place === 'popup' ? await openDemo(at.session, page) : await at.session.openPage('/sidepanel.html')
    await view.wait(/14 Tannery Row/)
    await view.click('button', 'after')
    await view.wait(/Meets the limit/)
    expect.soft(await violations(view.page), 'as it opens').toEqual([])
    await openAll(view)
    await view.page.evaluate(() => {
      for (const row of document.querySelectorAll<HTMLElement>('.fg-row button[aria-expanded=false]')) row.click()
    })
    expect.soft(await violations(view.page), 'every part open').toEqual([])
    if (place === 'popup') {
      await page.close()
      return
    }
    // Tall enough for everything: nothing lies half under the bar at the foot.
    await view.page.setViewport({ width: 380, height: 9000 })
    for (const panel of [/^Job: /, 'after', 'Add a test']) {
      await view.click('button', panel)
      await openAll(view)
      expect.soft(await violations(view.page), String(panel)).toEqual([])
    }
    await page.close()
  })
})

describe('the helper', () => {
  it('mapping, question, proposals, plan, receipt; and the form to practise on', async () => {
    const page = await at.session.open(`chrome-extension://${at.session.extension.id}/practice.html`)
    const popup = await openDemo(at.session, page)
    await popup.click('button', 'after')
    expect.soft(await violations(page), 'practice form').toEqual([])
    await popup.click('button', 'Map this page')
    const ui = await at.session.helper(page)
    await ui.wait(/Pick a control/)
    expect.soft(await helperViolations(page), 'mapping').toEqual([])
    await ui.click('button', /CFM50, whole number/)
    await ui.wait(/What goes into/)
    expect.soft(await helperViolations(page), 'question').toEqual([])
    await ui.click('radio', 'Words with figures between them')
    await ui.get('textbox', 'Words, part 1')
    expect.soft(await helperViolations(page), 'words').toEqual([])
    await ui.click('button', 'All controls')
    await ui.click('button', 'Propose for all')
    await ui.wait(/clearly fit/)
    expect.soft(await helperViolations(page), 'proposals').toEqual([])
    await ui.click('button', /^Bind these [1-9]\d*$/)
    await ui.click('button', 'Show the plan')
    await ui.wait(/Nothing is typed until you confirm/)
    expect.soft(await helperViolations(page), 'plan').toEqual([])
    await confirm(ui)
    expect.soft(await helperViolations(page), 'receipt').toEqual([])
    await page.close()
  })
})

describe('the book', () => {
  const sections = ['jobs', 'entries', 'entry-1', 'maps', 'devices', 'limits', 'review', 'settings']

  it.each([...sections, 'report?job=demo-job&test=demo-after'])('%s', async (hash) => {
    const book = await at.session.openPage(`/book.html#${hash}`)
    await book.wait(/Chain verified/)
    await new Promise((done) => setTimeout(done, 700))
    expect.soft(await violations(book.page), 'as it opens').toEqual([])
    await openAll(book)
    if (hash === 'maps') {
      await book.page.evaluate(() => document.querySelector<HTMLElement>('main button[aria-expanded=false]')?.click())
      await book.page.waitForSelector('main [aria-expanded=true]')
    }
    expect.soft(await violations(book.page), 'every part open').toEqual([])
    await book.page.close()
  })
})

describe('the widget', () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await openPlain('chromium')
  })
  afterAll(() => browser?.close())

  it('in a form of a page, empty and filled', async () => {
    const { page } = await visit(browser, at.site.widget.form)
    await page.waitForSelector('#w:defined')
    expect.soft(await violations(page, '#w'), 'empty').toEqual([])
    await withWidget(page, (widget, value) => void (widget.value = value), example)
    await page.waitForFunction(() => (document.getElementById('copy') as HTMLInputElement).value !== '')
    expect.soft(await violations(page, '#w'), 'filled').toEqual([])
    await page.close()
  })
})
