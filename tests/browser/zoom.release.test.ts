/**
 * At 200 %: what the browser's zoom does to a layout is half the width in CSS pixels and twice the device pixels.
 * WCAG 2.2, 1.4.4 and 1.4.10: nothing is cut off, and nothing is scrolled sideways but tables.
 */
import { mkdirSync } from 'node:fs'
import type { Page } from 'puppeteer-core'
import { expect, it } from 'vitest'
import { besideSite } from './beside-site.ts'
import type { Surface } from './harness.ts'
import { confirm, openDemo } from './round.ts'

const at = besideSite()

/** LOOK names a folder for a picture of each. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['LOOK']
  if (folder === undefined) return
  mkdirSync(folder, { recursive: true })
  await page.screenshot({ path: `${folder}/${name}.png` })
}

/** As text, for it runs in a page or in the dock: controls that stand outside the window, and sideways scrolling. */
const outside = `function () {
  const wide = innerWidth
  const found = []
  const page = document.documentElement
  if (page.scrollWidth > wide) found.push('The page is ' + page.scrollWidth + ' px wide, the window ' + wide + '.')
  for (const it of this.querySelectorAll('button, input, select, textarea, a[href], summary')) {
    const { left, right, width } = it.getBoundingClientRect()
    if (width <= 1 || !it.checkVisibility({ visibilityProperty: true })) continue
    // A table may be scrolled on its own.
    let around = it.parentElement
    while (around && !(around.scrollWidth > around.clientWidth && /auto|scroll/.test(getComputedStyle(around).overflowX))) around = around.parentElement
    if (around && around.querySelector('table') && around !== document.scrollingElement) continue
    if (left < -1 || right > wide + 1) found.push(it.outerHTML.slice(0, 120) + ' stands from ' + left + ' to ' + right + ' of ' + wide)
    if (/^button$|^summary$/.test(it.localName) && it.scrollWidth > it.clientWidth + 2 && getComputedStyle(it).overflowX !== 'visible') found.push(it.outerHTML.slice(0, 120) + ' is cut off')
  }
  return found
}`

const ofPage = (page: Page): Promise<string[]> => page.evaluate(`(${outside}).call(document.body)`) as Promise<string[]>

const ofHelper = (ui: Surface): Promise<string[]> => ui.ask<string[]>(outside)

const zoomed = (page: Page, width: number, height: number): Promise<void> =>
  page.setViewport({ width, height, deviceScaleFactor: 2 })

it('the helper on a page of 640 x 360', async () => {
  const page = await at.session.open(at.site.plain)
  await zoomed(page, 640, 360)
  const popup = await openDemo(at.session, page)
  await popup.click('button', 'after')
  await popup.click('button', 'Map this page')
  const ui = await at.session.helper(page)
  await ui.wait(/Pick a control/)
  expect.soft(await ofHelper(ui), 'mapping').toEqual([])
  await picture(page, 'zoom-mapping')
  await ui.click('button', 'Propose for all')
  await ui.click('button', /^Bind these [1-9]/)
  await ui.click('button', 'Show the plan')
  await ui.wait(/Nothing is typed until you confirm/)
  expect.soft(await ofHelper(ui), 'plan').toEqual([])
  await picture(page, 'zoom-plan')
  await confirm(ui)
  expect.soft(await ofHelper(ui), 'receipt').toEqual([])
  await picture(page, 'zoom-receipt')
  await page.close()
})

it.each([
  ['popup', 400, 300],
  ['sidepanel', 320, 450],
  ['sidepanel', 180, 450],
])('the calculator as %s at %i px', async (name, width, height) => {
  const view = await at.session.openPage(`/${name}.html`)
  await view.wait(/14 Tannery Row/)
  await zoomed(view.page, width, height)
  await view.wait(/Meets the limit/)
  expect.soft(await ofPage(view.page), 'as it opens').toEqual([])
  // A number without its unit can be taken for another: one in m³/h for one in cfm.
  const units = await view.page.$$eval('.fg-row .un', (cells) =>
    cells
      .filter((cell) => cell.textContent !== '')
      .map((cell) => cell.checkVisibility({ visibilityProperty: true }) && cell.getBoundingClientRect().width > 8),
  )
  expect.soft(units.length, 'figures with a unit').toBeGreaterThan(5)
  expect.soft(units, 'every unit is seen').not.toContain(false)
  // Findings name a row by its number, and a row is deleted at its number. WCAG 2.2, 2.5.8: targets of 24 px.
  const rows = await view.page.$$eval('.rd tbody tr:has([data-row])', (all) =>
    all.map((row) => {
      const number = row.querySelector('.no > span')!.getBoundingClientRect().width > 4
      row.querySelector<HTMLElement>('[data-column="pressure"]')!.focus({ preventScroll: true })
      const button = row.querySelector('.no button')?.getBoundingClientRect()
      return { number, ...(button && { deleted: Math.min(button.width, button.height) >= 24 }) }
    }),
  )
  expect
    .soft(rows, 'numbers and delete buttons of the rows')
    .toEqual([...Array.from({ length: rows.length - 1 }, () => ({ number: true, deleted: true })), { number: true }])
  // A baseline of ten readings is seen whole.
  const unseen = await view.page.$eval('[data-baseline="baselineAfter"]', async (cell) => {
    const box = cell as HTMLTextAreaElement
    const type = async (text: string) => {
      box.value = text
      box.dispatchEvent(new Event('input', { bubbles: true }))
      await new Promise((done) => setTimeout(done, 100))
    }
    const before = box.value
    await type('-0.8 -0.6 -1.1 -0.9 -1.4 -1.0 -1.2 -1.3 -0.7 -1.0')
    const around = box.parentElement!
    const past = [
      box.scrollWidth - box.clientWidth,
      box.scrollHeight - box.clientHeight,
      around.scrollHeight - around.clientHeight,
    ]
    await type(before)
    return past
  })
  expect.soft(unseen, 'what is cut of a long baseline').toEqual([0, 0, 0])
  await picture(view.page, `zoom-${name}`)
  await view.page.evaluate(async () => {
    for (const summary of document.querySelectorAll<HTMLElement>('details:not([open]) > summary')) summary.click()
    await new Promise((done) => setTimeout(done, 500))
  })
  expect.soft(await ofPage(view.page), 'every part open').toEqual([])
  await view.page.close()
})

it.each(['jobs', 'entry-1', 'maps', 'devices', 'limits', 'review', 'settings', 'report?job=demo-job&test=demo-after'])(
  'the book at 640 px: %s',
  async (hash) => {
    const book = await at.session.openPage(`/book.html#${hash}`)
    await zoomed(book.page, 640, 450)
    await book.wait(/Chain verified/)
    await new Promise((done) => setTimeout(done, 500))
    expect(await ofPage(book.page)).toEqual([])
    await picture(book.page, `zoom-book-${hash.slice(0, 6)}`)
    await book.page.close()
  },
)

it.each([640, 1200])('what became of an entry, typed within its panel at %i px', async (width) => {
  const book = await at.session.openPage('/book.html#entry-1')
  await zoomed(book.page, width, 900)
  await book.click('button', 'Note what became of it')
  await book.get('textbox', 'Confirmation number')
  const past = await book.page.$eval('form.sheet', (form) => {
    const { left, right } = form.getBoundingClientRect()
    return [...form.querySelectorAll('input, select, textarea, button')]
      .map((control) => control.getBoundingClientRect())
      .filter((box) => box.left < left || box.right > right).length
  })
  expect(past, 'controls that stand out of the panel').toBe(0)
  await book.page.close()
})
