/** What is done on each page of tests/pages/hostile, and what must hold then: one list for both browsers. */
import { expect } from 'vitest'
import { coverCases } from './hostile-cover-cases.ts'
import { gateCases } from './hostile-gate-cases.ts'
import { asked, attack, heldBy, lives, outcomesOf, truthful, type Attacked } from './hostile.ts'
import { confirm } from './round.ts'
import { until } from './surface.ts'

const allEntered = Object.fromEntries(Object.keys(asked).map((name) => [name, 'entered']))
const nothing = Object.fromEntries(Object.keys(asked).map((name) => [name, '']))

const hiddenLater = {
  town: 'refused',
  volume: 'refused',
  date: 'refused',
  cfm50: 'refused',
  tester: 'refused',
  licence: 'refused',
}

interface CutOff {
  complete: boolean
  planned: unknown[]
  lines: { outcome: string }[]
}

/** Reads the newest entry out of the book's own database. */
const newestEntry = `function () {
  return new Promise((resolve) => {
    const opening = this.ownerDocument.defaultView.indexedDB.open('gapsum')
    opening.onsuccess = () => {
      const reading = opening.result.transaction('entries').objectStore('entries').openCursor(null, 'prev')
      reading.onsuccess = () => resolve(JSON.stringify(reading.result?.value))
    }
  })
}`

interface Read {
  found: string[]
  read: string
  frames: number
}

type Case = (attacked: Attacked) => Promise<void>

/** By what the page is like, and by what it does. */
export const cases: Readonly<Record<string, Readonly<Record<string, Case>>>> = {
  ...gateCases,
  ...coverCases,
  'a page that reaches for the helper': {
    async 'reads nothing of it, and its clicks and keys do nothing'(attacked) {
      const page = await attacked.visit('reads')
      const ui = await attacked.plan(page)
      const read = (await attack(page)) as unknown[]
      expect(read[0]).toBeNull()
      expect(read.slice(1).join('')).not.toMatch(/Tannery|Marrowby|754|Halvorsen/)
      expect(await page.evaluate('roots.length')).toBe(0)
      await new Promise((done) => setTimeout(done, 500))
      await ui.wait(/Nothing is typed until you confirm/)
      expect((await heldBy(page)).named).toEqual(nothing)
      expect(outcomesOf(await confirm(ui))).toEqual(allEntered)
      // The page hears at most that something was done to the host.
      const within = (await page.evaluate(
        'paths.filter((name) => /^(button|h1|table|footer|section)$/.test(name))',
      )) as string[]
      expect(within).toEqual([])
    },

    async 'searches, selects, points and listens: it comes to know nothing of the plan'(attacked) {
      const page = await attacked.visit('finds')
      const ui = await attacked.plan(page)
      const texts = Object.values(asked).map(({ text }) => text)
      const words = ['Tannery', 'Marrowby', 'Halvorsen', 'Bellwether', 'to enter', 'Nothing is typed', 'Text to enter']
      const { found, read, frames } = (await attack(page, [...texts, ...words])) as Read
      expect(found).toEqual([])
      expect(read).not.toMatch(/Tannery|Marrowby|754|15810|Halvorsen|T-0442|typed|dock/)
      expect(frames).toBe(0)
      await ui.key('Tab')
      await ui.click('button', 'Change the map')
      await ui.click('button', /^5 ?CFM50/)
      await ui.click('searchbox', 'Find a figure or job field')
      for (const key of ['5', '5', '5'] as const) await ui.key(key)
      expect(await ui.value('searchbox', 'Find a figure or job field')).toBe('555')
      const again = (await attack(page, [...texts, '555'])) as Read
      expect(again.found).toEqual([])
      expect(again.read).not.toMatch(/Tannery|Marrowby|754|15810|Halvorsen|T-0442|555/)
      expect(((await page.evaluate('keys')) as string[]).filter((heard) => /key|input/i.test(heard))).toEqual([])
    },

    async 'shows the form in a modal dialog of a web component: the helper is within reach, and fills it'(attacked) {
      for (const mode of ['open', 'closed']) {
        const page = await attacked.visit('dialogs')
        await attack(page, mode)
        const { lines } = await attacked.fill(page)
        expect([mode, outcomesOf(lines)]).toEqual([mode, allEntered])
      }
    },

    async 'names elements as the helper names its own things, and is filled all the same'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('names'))
      expect(outcomesOf(lines)).toEqual(allEntered)
    },

    async 'sends messages of every kind and is heard by nobody'(attacked) {
      const page = await attacked.visit('messages')
      const ui = await attacked.plan(page)
      expect(await attack(page, attacked.session.id, attacked.session.origin)).toEqual([])
      await new Promise((done) => setTimeout(done, 500))
      await ui.wait(/Nothing is typed until you confirm/)
      expect(await ui.text()).not.toMatch(/Evil/)
      expect((await heldBy(page)).named).toEqual(nothing)
      const book = await attacked.session.openPage('/book.html#maps')
      expect(await book.wait(/Permit sheet/)).not.toMatch(/Evil/)
      await book.close()
    },

    async 'throws the helper out each time: the page does not hang, and what is shown comes back'(attacked) {
      const page = await attacked.visit('evicts')
      const ui = await attacked.plan(page)
      await attack(page)
      await lives(page)
      expect(Number(await page.evaluate('evicted'))).toBeLessThan(500)
      expect((await heldBy(page)).named).toEqual(nothing)
      await page.evaluate('window.resting = true')
      await ui.wait(/Nothing is typed until you confirm/)
    },

    async 'puts its whole document in anew: the helper stays and fills the new one'(attacked) {
      const page = await attacked.visit('wipes')
      const { lines } = await attacked.fill(page, () => attack(page))
      expect(outcomesOf(lines)).toEqual(allEntered)
    },

    async 'lays a sheet over the helper: the helper comes to the top again'(attacked) {
      const page = await attacked.visit('veils')
      const ui = await attacked.plan(page)
      await attack(page)
      await new Promise((done) => setTimeout(done, 500))
      expect(Number(await page.evaluate('helperOnTop()'))).toBeGreaterThan(20)
      await ui.wait(/Nothing is typed until you confirm/)
    },
  },

  'a page whose own scripts cannot be trusted': {
    async 'overrides what every script is built on, and is filled all the same'(attacked) {
      const page = await attacked.visit('overrides')
      const { lines } = await attacked.fill(page)
      expect(outcomesOf(lines)).toEqual(allEntered)
      expect(await page.evaluate('window.caught')).toEqual([])
    },

    async 'names its fields after what scripts ask of forms, and is filled all the same'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('clobbers'))
      expect(outcomesOf(lines)).toEqual(allEntered)
    },

    async 'throws at every event and setter: each line says what the page did'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('throws'))
      expect(outcomesOf(lines)).toEqual({ ...allEntered, town: 'refused', cfm50: 'differs', licence: 'refused' })
    },

    async 'forbids all styles, scripts and markup by its policy, and is filled all the same'(attacked) {
      const page = await attacked.visit('strict')
      const { lines, ui } = await attacked.fill(page)
      expect(outcomesOf(lines)).toEqual(allEntered)
      expect(await ui.text()).toMatch(/Nothing was submitted/)
    },

    async 'takes the focus to a field that nobody sees: nothing is typed there'(attacked) {
      const { lines, held } = await attacked.fill(await attacked.visit('steals'))
      expect(held.others).toEqual([])
      expect(lines.length).toBe(7)
    },
  },

  'a page that changes what is filled': {
    async 'exchanges labels during the fill: no text goes under a label that it is not for'(attacked) {
      const page = await attacked.visit('swaps')
      // What the page calls tester now was the control of the licence number, and the other way round.
      const names = { ...asked, tester: asked['licence']!, licence: asked['tester']! }
      const { lines, held } = await attacked.fill(page, undefined, names)
      // By the exchanged labels, the control once called tester is the one for the licence number now.
      expect(['', asked['licence']?.text]).toContain(held.named['tester'])
      expect(['', asked['tester']?.text]).toContain(held.named['licence'])
      // The heading speaks of another test now.
      expect(outcomesOf(lines)['cfm50']).toBe('not found')
      expect(held.named['cfm50']).toBe('')
    },

    async 'exchanges controls right before the press on Fill: the plan is shown anew and nothing is typed'(attacked) {
      const page = await attacked.visit('replaces')
      const ui = await attacked.plan(page)
      await attack(page)
      await ui.click('button', /^Fill \d+ controls?$/)
      await ui.wait(/The page has changed since this plan was shown/)
      expect((await heldBy(page)).named).toEqual(nothing)
    },

    async 'hides controls while others are filled: what cannot be seen is refused in a sentence'(attacked) {
      const page = await attacked.visit('hides')
      const { lines, held, ui } = await attacked.fill(page)
      expect(outcomesOf(lines)).toEqual({ ...allEntered, ...hiddenLater })
      for (const name of Object.keys(hiddenLater)) expect([name, held.named[name]]).toEqual([name, ''])
      expect(await ui.text()).toMatch(/cannot be seen/)
    },

    async 'lays sheets over controls that no pointer meets: they are refused'(attacked) {
      const page = await attacked.visit('inert')
      const { lines, held } = await attacked.fill(page)
      // A property that the browser does not know makes no sheet unmet: that one covers as any other.
      const covered = { town: 'refused', volume: 'refused', cfm50: 'refused' }
      expect(outcomesOf(lines)).toEqual({ ...allEntered, ...covered })
      for (const name of Object.keys(covered)) expect([name, held.named[name]]).toEqual([name, ''])
      expect(await page.evaluate('left()')).toBe(3)
    },

    async 'puts controls far to the side: nobody scrolls there for them, and they are refused'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('aside'))
      const far = { town: 'refused', volume: 'refused', date: 'refused' }
      expect(outcomesOf(lines)).toEqual({ ...allEntered, ...far })
    },

    async 'cuts off what stands to the side: it is refused'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('aside', '&cut=off'))
      const cut = { town: 'refused', volume: 'refused', date: 'refused', licence: 'refused' }
      expect(outcomesOf(lines)).toEqual({ ...allEntered, ...cut })
    },

    async 'has hidden them before the plan is opened: none of them is written'(attacked) {
      const page = await attacked.visit('hides', '&when=before')
      const { held } = await attacked.fill(page)
      expect(held.named).toEqual({ ...nothing, street: asked['street']?.text })
    },

    async 'stands lookalikes that nobody sees beside every control: they get nothing'(attacked) {
      const { lines, held } = await attacked.fill(await attacked.visit('twins'))
      expect(held.others).toEqual([])
      expect(outcomesOf(lines)).toEqual(allEntered)
    },

    async 'draws itself anew without end: the fill ends, and the receipt is true'(attacked) {
      const page = await attacked.visit('redraws')
      const { lines } = await attacked.fill(page)
      expect(lines.length).toBe(7)
    },

    async 'grows at its end: the fill does not make it grow'(attacked) {
      const page = await attacked.visit('scrolls')
      const { lines } = await attacked.fill(page)
      expect(outcomesOf(lines)).toEqual(allEntered)
      expect(await page.evaluate('grown')).toBe(0)
    },
  },

  'a page that goes away': {
    async 'leaves for another address in the middle: the book says how far it came'(attacked) {
      const page = await attacked.visit('leaves')
      const ui = await attacked.plan(page)
      await ui.click('button', /^Fill \d+ controls?$/)
      await page.waitForFunction(`location.search.includes('after=leaving') && window.watch`)
      expect((await heldBy(page)).named).toEqual(nothing)
      const book = await attacked.session.openPage('/book.html')
      // The fill that was cut off becomes an entry as soon as its page is gone; its tab is still there.
      const entry = await until(async () => {
        const newest = JSON.parse(await book.ask<string>(newestEntry)) as CutOff
        return newest.complete ? undefined : newest
      })
      expect(entry?.planned.length).toBe(7)
      expect(entry?.lines.length).toBeGreaterThan(0)
      expect(entry?.lines.length).toBeLessThan(7)
      expect(entry?.lines.every(({ outcome }) => outcome === 'entered')).toBe(true)
      await book.close()
    },

    async 'takes the frame with the form away under the plan: the press on Fill is answered'(attacked) {
      const page = await attacked.visit('frame')
      const ui = await attacked.plan(page)
      await page.evaluate('setTimeout(attack)')
      await ui.click('button', /^Fill \d+ controls?$/)
      await ui.wait(/The page has changed since this plan was shown/)
      await ui.wait(/7 not found/)
    },

    async 'takes the frame with the form away in the middle: each line says so'(attacked) {
      const page = await attacked.visit('frame')
      const { lines } = await attacked.fill(page)
      expect(lines.length).toBe(7)
      expect(lines.every(({ outcome }) => outcome !== 'entered')).toBe(true)
      await truthful(page, lines)
    },
  },

  'a page without measure': {
    async 'holds its form in fifty frames, one in the other or as many as the browser allows, and is filled'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('nested'))
      expect(outcomesOf(lines)).toEqual(allEntered)
    },

    async 'has a hundred thousand controls, and is filled'(attacked) {
      const { lines } = await attacked.fill(await attacked.visit('many'))
      expect(outcomesOf(lines)).toEqual(allEntered)
    },
  },
}

/**
 * One case of each kind, for every test run; release tests run the others. Firefox takes longer over them: every third.
 */
export const sampled = (browser: 'Chromium' | 'Firefox'): [string, Case][] =>
  Object.entries(cases)
    // A page without measure takes the most of a minute.
    .filter(([kind]) => kind !== 'a page without measure')
    .flatMap(([, those], at) => (browser === 'Chromium' || at % 3 === 2 ? Object.entries(those).slice(0, 1) : []))

/** The cases that are not among those, by kind. */
export const others = (browser: 'Chromium' | 'Firefox'): [string, [string, Case][]][] => {
  const taken = new Set(sampled(browser).map(([title]) => title))
  return Object.entries(cases)
    .map(([kind, those]): [string, [string, Case][]] => [
      kind,
      Object.entries(those).filter(([title]) => !taken.has(title)),
    ])
    .filter(([, those]) => those.length > 0)
}
