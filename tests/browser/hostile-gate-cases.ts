/** Pages that change a control just before, while or after it is written; the same list for both browsers. */
import type { Page } from 'puppeteer-core'
import { expect } from 'vitest'
import { asked, attack, heldBy, outcomesOf, type Attacked } from './hostile.ts'
import { confirm } from './round.ts'
import { until, type Surface } from './surface.ts'

type Case = (attacked: Attacked) => Promise<void>

const allEntered = Object.fromEntries(Object.keys(asked).map((name) => [name, 'entered']))

interface Kept {
  page: { title: string; path: string }
  complete: boolean
  planned: unknown[]
  lines: { control: string; outcome: string; readBack: string; note: string }[]
}

/** Reads the newest entry out of the book's own database. */
const newest = `function () {
  return new Promise((resolve) => {
    const opening = this.ownerDocument.defaultView.indexedDB.open('gapsum')
    opening.onsuccess = () => {
      const reading = opening.result.transaction('entries').objectStore('entries').openCursor(null, 'prev')
      reading.onsuccess = () => resolve(JSON.stringify(reading.result?.value))
    }
  })
}`

/** The newest entry, once it is as it should be. */
export async function newestEntry(attacked: Attacked, fits: (entry: Kept) => boolean): Promise<Kept> {
  const book = await attacked.session.openPage('/book.html')
  const entry = await until(async () => {
    const kept = JSON.parse(await book.ask<string>(newest)) as Kept
    return fits(kept) ? kept : undefined
  })
  await book.close()
  if (!entry) throw new Error('The book got no such entry.')
  return entry
}

/** Fills a page; what is named is refused and stays empty, all else is entered. */
const refuses =
  (page: string, ...names: string[]): Case =>
  async (attacked) => {
    const { lines, held } = await attacked.fill(await attacked.visit(page))
    const refused = Object.fromEntries(names.map((name) => [name, 'refused']))
    expect(outcomesOf(lines)).toEqual({ ...allEntered, ...refused })
    for (const name of names) expect([name, held.named[name]]).toEqual([name, ''])
  }

/** Attacks of tests/pages/hostile/parts on the controls after the first, one on each; none of these is written. */
const refusesEach =
  (...parts: string[]): Case =>
  async (attacked) => {
    const names = Object.keys(asked).slice(1)
    const page = await attacked.visit('joint', `&${names.map((name, at) => `${name}=${parts[at]}`).join('&')}`)
    const { lines, held } = await attacked.fill(page)
    const outcomes = outcomesOf(lines)
    // What is put away is refused, or no longer one of the page's controls.
    expect(names.map((name) => outcomes[name]).filter((each) => !/^(refused|not found)$/.test(each ?? ''))).toEqual([])
    expect(names.map((name, at) => [parts[at], held.named[name]])).toEqual(parts.map((part) => [part, '']))
    expect(outcomes['street']).toBe('entered')
  }

/** The receipt of a page that was filled, once it says more. */
async function later(attacked: Attacked, page: Page, says: RegExp): Promise<Surface> {
  const ui = await attacked.plan(page)
  expect(outcomesOf(await confirm(ui))).toEqual(allEntered)
  await attack(page)
  await ui.wait(says)
  return ui
}

export const gateCases: Readonly<Record<string, Readonly<Record<string, Case>>>> = {
  'a page that turns a control into one that nobody fills': {
    'by type, autofill word or dots, at its focus or before it: nothing is typed there': refuses(
      'becomes',
      'town',
      'volume',
      'cfm50',
      'tester',
      'licence',
    ),

    async 'between two keys: the rest of the text stays out, and the receipt says what is there'(attacked) {
      const page = await attacked.visit('midway')
      const { lines, held } = await attacked.fill(page)
      expect(outcomesOf(lines)).toEqual({ ...allEntered, volume: 'differs' })
      const line = lines.find(({ control }) => control === asked['volume']?.control)
      expect(line?.readBack).toBe(held.named['volume'])
      expect(held.named['volume']!.length).toBeLessThan(4)
    },

    async 'long after it was filled: the receipt says so, and the book too'(attacked) {
      const page = await attacked.visit('hushed')
      await later(attacked, page, /is for a password now/)
      const entry = await newestEntry(attacked, ({ lines }) => lines.length === 1)
      expect(entry.lines[0]?.outcome).toBe('differs')
    },
  },

  'a page that hides what is filled past its own rules': {
    'lets the pointer through by rules that no rule undoes': refuses('important', 'town', 'volume', 'cfm50'),
    'draws sheets before and after the content of something else': refuses('pseudo', 'town', 'volume'),
    'opens a popover whose backdrop lies over everything': async (attacked) => {
      const { lines } = await attacked.fill(await attacked.visit('backdrop'))
      const outcomes = outcomesOf(lines)
      expect(outcomes['street']).toBe('entered')
      for (const name of Object.keys(asked).slice(1)) expect([name, outcomes[name]]).toEqual([name, 'refused'])
    },
    'draws the controls by filters, masks and blending so that nobody sees them': refuses(
      'filters',
      'town',
      'volume',
      'cfm50',
      'tester',
      'licence',
    ),
    'cuts, folds and turns them away': refusesEach('clip', 'collapses', 'skipped', 'shrinks', 'turns', 'clipped'),
    'moves them where nobody looks, or covers them by drawings': refusesEach(
      'fixed',
      'slides',
      'fades',
      'canvas',
      'framed',
      'found',
    ),
    'turns them into what nobody fills, or puts them away': refusesEach(
      'code',
      'card',
      'off',
      'aria',
      'details',
      'closed',
    ),
    'writes their text so that nobody can read it': refuses('unreadable', 'town', 'volume', 'cfm50', 'tester'),
    'lays blurring glass over them': refuses('frosted', 'volume', 'tester'),
    'moves an inert sheet away while one looks': refuses('reacts', 'volume'),
  },

  'a page whose form holds something else than it shows': {
    async 'replaces a value long after the fill: the receipt says so, and the book too'(attacked) {
      const page = await attacked.visit('later')
      const ui = await later(attacked, page, /changed by the page after it was entered/)
      expect(await ui.text()).toMatch(/169/)
      const entry = await newestEntry(attacked, ({ lines }) => lines.length === 1)
      expect(entry.lines).toMatchObject([{ control: 'CFM50', outcome: 'differs', readBack: '169' }])
    },

    async 'shows one number and would submit another: the line says both, and no script hears of the look'(attacked) {
      const page = await attacked.visit('submits')
      const ui = await attacked.plan(page)
      const lines = await confirm(ui)
      expect(outcomesOf(lines)).toEqual({ ...allEntered, cfm50: 'differs' })
      expect(await ui.text()).toMatch(/would submit “999”/)
      expect(await page.evaluate('collected')).toBe(0)
    },
  },

  'a page that goes to another address without loading': {
    async 'before the press: nothing is typed, and it says why'(attacked) {
      const page = await attacked.visit('moves')
      const ui = await attacked.plan(page)
      await attack(page)
      await ui.click('button', /^Fill \d+ controls?$/)
      await ui.wait(/gone to another address/)
      expect(Object.values((await heldBy(page)).named).join('')).toBe('')
    },

    async 'in the middle: the fill stops there, and the receipt says why'(attacked) {
      const { lines, ui } = await attacked.fill(await attacked.visit('moves', '&midway'))
      const outcomes = Object.values(outcomesOf(lines))
      expect(outcomes.filter((each) => each === 'entered').length).toBe(3)
      expect(outcomes.filter((each) => each === 'refused').length).toBe(4)
      expect(await ui.text()).toMatch(/The fill stopped: the page has gone to another address/)
    },
  },

  'a page that is long beyond measure': {
    async 'in its texts and in what its controls hold: it is filled, and the book keeps little of it'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('long'))
      expect(outcomesOf(lines)).toEqual(allEntered)
      const entry = await newestEntry(attacked, ({ page }) => page.title.startsWith('a:'))
      expect(entry.page.title.length).toBeLessThanOrEqual(500)
      expect(JSON.stringify(entry).length).toBeLessThan(1_500_000)
      expect(entry.lines.filter(({ note }) => /held 700000 characters/.test(note)).length).toBe(2)
    },

    async 'in rows and groups: it is filled'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('wide'))
      expect(outcomesOf(lines)).toEqual(allEntered)
    },
  },
}
