/** The whole round by keys alone, from the toolbar's action to the kept entry; and how many keys it takes. */
import type { KeyInput, Page } from 'puppeteer-core'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { startSite, type Site } from '../pages/site/server.ts'
import { launch, type Session, type Surface } from './harness.ts'
import { modelOf, openDemo, openPlan } from './round.ts'
import { until, type Focused, type Name } from './surface.ts'

let session: Session
let site: Site

beforeEach(async () => {
  ;[session, site] = await Promise.all([launch(), startSite()])
})
afterEach(async () => {
  await session?.close()
  await site?.close()
})

/** Two hands at a keyboard: nothing is clicked, and every step of the focus is looked at. */
class Hands {
  /** Keys pressed that are no text. */
  pressed = 0
  readonly #view: Surface
  readonly #page: Page

  constructor(view: Surface, page: Page) {
    this.#view = view
    this.#page = page
  }

  async press(key: KeyInput): Promise<void> {
    this.pressed += 1
    // A window that closes at a key does not answer any more.
    await this.#page.keyboard.press(key).catch(() => {})
  }

  async type(text: string): Promise<void> {
    await this.#page.keyboard.type(text)
  }

  /** Goes on with one key until something of that name has the focus, and sees the focus at every step. */
  async to(name: Name, key: 'Tab' | 'Shift+Tab' = 'Tab', most = 90): Promise<Focused> {
    const way: string[] = []
    for (let step = 0; step < most; step++) {
      if (key === 'Shift+Tab') await this.#back()
      else await this.press(key)
      const at = await this.#view.focused()
      way.push(at?.name ?? 'nothing')
      if (!at) continue
      // oxlint-disable-next-line vitest/no-standalone-expect -- called by tests only
      expect(at, `the focus after ${way.slice(-3).join(', then ')}`).toMatchObject({ ringed: true, seen: true })
      if (typeof name === 'string' ? at.name === name : name.test(at.name)) return at
    }
    throw new Error(`${String(name)} never had the focus. The way was: ${way.join(' | ')}`)
  }

  async #back(): Promise<void> {
    this.pressed += 1
    await this.#page.keyboard.down('Shift')
    await this.#page.keyboard.press('Tab')
    await this.#page.keyboard.up('Shift')
  }

  /** Waits until something of that name has the focus, with no key. */
  async expectAt(name: Name): Promise<void> {
    const at = await until(async () => {
      const one = await this.#view.focused()
      return one && (typeof name === 'string' ? one.name === name : name.test(one.name)) ? one : undefined
    }, 4000)
    if (!at)
      throw new Error(`The focus is not at ${String(name)} but at ${JSON.stringify(await this.#view.focused())}.`)
  }
}

const handsAt = (view: Surface): Hands => new Hands(view, view.page)

it('from the action to a kept entry', async () => {
  const page = await session.open(site.plain)
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  const start = await page.evaluate(() => document.activeElement?.outerHTML)
  const before = await modelOf(page)

  const popup = await session.openPopup(page)
  await popup.wait(/From readings to a record/)
  const first = handsAt(popup)
  await first.to('Start a job')
  await first.press('Enter')
  await first.expectAt('House pressure, point 1, Pa')
  await first.type('-50')
  await first.to('Flow, point 1, cfm')
  await first.type('433')
  await first.to(/^Volume/)
  await first.type('8726')
  // 433 cfm at 50 Pa in 8,726 ft3: 433 x 60 / 8726 = 2.98, a published worked example.
  await popup.wait(/2\.98/)
  const copied = await first.to(/^Copy ACH50/)
  await first.press('Enter')
  await popup.wait(new RegExp(`copied ${copied.name.split(', ')[1]}`))
  await first.expectAt(/^Copy ACH50/)
  // A part that opens keeps the focus where it was opened, and closes again there.
  await first.to(/^Job: /, 'Shift+Tab')
  await first.press('Enter')
  await popup.wait(/Duplicate/)
  await first.expectAt(/^Job: /)
  await first.press('Enter')
  await first.to('Map this page')
  await first.press('Enter')

  const ui = await session.helper(page)
  await ui.wait(/Pick a control/)
  // The browser gives the window back to the page when the popup has closed.
  await page.bringToFront()
  const hands = new Hands(ui, page)
  await hands.to(/CFM at 50 Pa/)
  await hands.press('Enter')
  await ui.wait(/What goes into/)
  await hands.expectAt(/^What goes into/)
  await hands.to('Find a figure or job field')
  await hands.type('cfm50')
  await hands.to(/^CFM50/)
  await hands.press('Space')
  await ui.wait(/will be entered as\s+433/)
  await hands.to('Bind, then next')
  await hands.press('Enter')
  await ui.wait(/1 of \d+ controls bound/)
  // Wherever the focus is now, Escape goes back to the list, and to the control asked about.
  await hands.press('Escape')
  await ui.wait(/Pick a control/)
  await ui.wait(/kept/)
  expect(await ui.focused(), 'after the question').toBeDefined()
  await hands.to('Show the plan')
  await hands.press('Enter')
  await ui.wait(/Nothing is typed until you confirm/)
  expect(await modelOf(page), 'before it is confirmed').toEqual(before)
  await hands.to('Fill 1 control')
  await hands.press('Enter')
  await hands.expectAt(/Receipt/)
  expect(Object.values(await modelOf(page))).toContain('433')
  await hands.to('Close')
  await hands.press('Enter')
  await ui.gone()
  expect(await page.evaluate(() => document.activeElement?.outerHTML), 'the focus is back on the page').toBe(start)

  const again = await session.openPopup(page)
  await again.wait(/1 binding|left/)
  await again.get('textbox', 'House pressure, point 1, Pa')
  const last = handsAt(again)
  await last.to('Open book', 'Shift+Tab')
  await last.press('Enter')
  const book = await session.waitForPage('/book.html')
  await book.wait(/Chain verified/)
  await book.page.bringToFront()
  const reading = handsAt(book)
  await reading.to(/^Entry 1,/)
  await reading.press('Enter')
  await book.wait(/Place in the chain/)
  await reading.expectAt(/^Entry 1,/)
  expect(await book.page.evaluate(() => document.activeElement?.ariaExpanded)).toBe('true')
})

it('takes at most 12 keys beyond the digits from the open popup to figures of a one-point test', async () => {
  const page = await session.open(site.plain)
  const begun = await session.openPopup(page)
  const opening = handsAt(begun)
  await opening.to('Start a job')
  await opening.press('Enter')
  await begun.wait(/kept \d|Readings/)
  await begun.page.close()

  const popup = await session.openPopup(page)
  const hands = handsAt(popup)
  await hands.expectAt('House pressure, point 1, Pa')
  await hands.type('50.1')
  await hands.to('Flow, point 1, cfm')
  await hands.type('433')
  await hands.to(/^Volume/)
  await hands.type('8726')
  await popup.wait(/ACH50/)
  await popup.get('button', /^Copy ACH50, \d/)
  await popup.get('button', /^Copy CFM50, \d/)
  console.log(`Keys beyond the digits from the open popup to figures: ${hands.pressed}`)
  expect(hands.pressed).toBeLessThanOrEqual(12)
})

it('fills a mapped form in three acts: open the popup, ask for the plan, confirm', async () => {
  const page = await session.open(site.plain)
  const popup = await openDemo(session, page)
  await popup.click('button', 'Map this page')
  const mapping = await session.helper(page)
  await mapping.click('button', 'Propose for all')
  await mapping.click('button', /^Bind these [1-9]/)
  await mapping.wait(/kept/)
  await mapping.click('button', 'Close')
  await mapping.gone()

  const plan = await openPlan(session, page)
  await plan.click('button', /^Fill [1-9]\d* controls$/)
  const receipt = await plan.wait(/controls entered/)
  expect(receipt).toMatch(/Nothing was submitted/)
})
