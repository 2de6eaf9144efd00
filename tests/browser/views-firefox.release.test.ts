/** Firefox's own sidebar, the practice form, and the keys of the commands, pressed on the browser's window. */
import { afterAll, beforeAll, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { figureAnswers } from './answers.ts'
import { launchFirefox, type FirefoxSession } from './firefox.ts'
import { bindClear } from './places.ts'
import { confirm, openDemo } from './round.ts'

let site: Site
let session: FirefoxSession

beforeAll(async () => {
  ;[session, site] = await Promise.all([launchFirefox(), startSite()])
  // The demo job is in hand from here on.
  const page = await session.open(site.plain)
  await openDemo(session, page)
  await session.closePopup()
})
afterAll(async () => {
  await session?.close()
  await site?.close()
})

it('opens the sidebar at Alt+Shift+K, with the figures of the job in hand', async () => {
  await session.pressCommand('K')
  const sidebar = session.sidebar()
  await sidebar.wait(/14 Tannery Row/)
  await sidebar.click('button', 'after')
  await sidebar.wait(/ACH50/)
  const figures = await sidebar.rows()
  const wanted = Object.entries(figureAnswers['after'] ?? {})
  expect(wanted.length).toBeGreaterThan(0)
  for (const [name, value] of wanted) expect(figures.map((cells) => cells.slice(0, 2))).toContainEqual([name, value])
  await sidebar.close()
  await sidebar.gone()
})

it('opens the popup at Alt+Shift+G', async () => {
  await session.pressCommand('G')
  expect(await session.popup().wait(/14 Tannery Row/)).toContain('Open book')
  await session.closePopup()
})

it('shows the plan of the only form map of a page at Alt+Shift+F', async () => {
  const page = await session.open(site.plain)
  await (await openDemo(session, page)).click('button', 'Map this page')
  const ui = await session.helper(page)
  await ui.wait(/0 of \d+ controls bound/)
  await bindClear(ui)
  await ui.click('button', 'Close')
  await ui.gone()
  await session.pressCommand('F')
  await ui.wait(/Nothing is typed until you confirm/, 4000)
  expect(await session.popup().present()).toBe(false)
  await page.close()
})

it('maps the form to practise on by its proposals, fills it, and shows the receipt', async () => {
  const form = await session.openPage('/practice.html')
  await form.wait(/CFM/)
  const popup = await session.openPopup()
  await popup.click('button', 'after')
  await popup.click('button', 'Map this page')
  const ui = await session.helper({ url: () => `${session.origin}/practice.html` })
  await ui.click('button', 'Propose for all')
  await ui.wait(/clearly fit/)
  await ui.click('button', /^Bind these [1-9]\d*$/)
  await ui.click('button', 'Show the plan')
  await ui.wait(/Nothing is typed until you confirm/)
  const lines = await confirm(ui)
  expect(lines.length).toBeGreaterThan(4)
  for (const { intended, readBack, outcome } of lines) expect([outcome, readBack]).toEqual(['entered', intended])
  await form.close()
})
