import { afterEach, beforeEach, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, helper, type Session } from './harness.ts'
import { mapPage } from './map-page.ts'
import { bookLines, formOf, modelOf, openDemo, openPlan } from './round.ts'
import { until } from './surface.ts'

let site: Site
let session: Session

beforeEach(async () => {
  site = await startSite()
  session = await launch()
})
afterEach(async () => {
  await session.close()
  await site.close()
})

it('keeps what was typed when the browser is killed in the middle of typing', async () => {
  const page = await session.open(site.plain)
  const popup = await session.openPopup(page)
  await popup.click('button', 'Start a job')
  await popup.type('textbox', 'House pressure, point 1, Pa', '-50.3')
  await popup.type('textbox', 'Flow, point 1, cfm', '79')
  // A keystroke that was written down says so; the power fails before anything is closed.
  await popup.wait(/kept \d/)
  await popup.type('textbox', 'House pressure, point 2, Pa', '-3')
  const typed = await until(async () =>
    (await popup.value('textbox', 'House pressure, point 2, Pa')) === '-3' ? true : undefined,
  )
  expect(typed).toBe(true)
  // Writing follows typing within a moment; a person would not be faster to the plug.
  await new Promise((resolve) => {
    setTimeout(resolve, 300)
  })
  await session.restart()

  const again = await session.openPopup(await session.open(site.plain))
  expect(await again.value('textbox', 'House pressure, point 1, Pa')).toBe('-50.3')
  expect(await again.value('textbox', 'Flow, point 1, cfm')).toBe('79')
  expect(await again.value('textbox', 'House pressure, point 2, Pa')).toBe('-3')
})

it('keeps an entry of a fill that was cut off, with what was entered until then', async () => {
  const form = formOf(site, 'plain')
  const page = await session.open(form.url)
  const popup = await openDemo(session, page)
  await popup.click('button', 'Map this page')
  await mapPage(page, await helper(page), form)
  const ui = await openPlan(session, page)

  await ui.click('button', /^Fill \d+ controls$/)
  const entered = await until(async () => {
    const written = Object.values(await modelOf(page)).filter((value) => value !== '' && value !== false).length
    return written >= 6 ? written : undefined
  })
  expect(entered, 'the fill must be under way').toBeDefined()
  await session.restart()

  await session.open(site.plain)
  await session.openPage('/book.html#entry-1')
  const { book, lines, number } = await bookLines(session)
  expect(number).toBe('1')
  expect(await book.text()).toMatch(/The fill did not go through to its end/)
  expect(lines.length).toBe(form.answers.length)
  const done = lines.filter(({ outcome }) => outcome === 'entered')
  expect(done.length).toBeGreaterThan(1)
  expect(done.length).toBeLessThan(lines.length)
  for (const { intended, readBack } of done) expect(readBack).toBe(intended)
  expect(lines.filter(({ outcome }) => outcome === 'not reached').length).toBe(lines.length - done.length)
})
