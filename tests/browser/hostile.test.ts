/** Pages that mean harm, through the real action of the built extension. */
import type { Page } from 'puppeteer-core'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { asked, Attacked, heldBy, helper, lives, outcomesOf, truthful } from './hostile.ts'
import { confirm } from './round.ts'
import { until } from './surface.ts'

const attacked = new Attacked()
const open: Page[] = []

beforeAll(() => attacked.start())

afterEach(async () => {
  for (const page of open.splice(0)) await page.close()
})

afterAll(() => attacked.close())

async function visit(name: string, more?: string): Promise<Page> {
  const page = await attacked.visit(name, more)
  open.push(page)
  return page
}

const attack = (page: Page, ...args: unknown[]) =>
  page.evaluate(`attack(${args.map((arg) => JSON.stringify(arg)).join()})`)

const allEntered = Object.fromEntries(Object.keys(asked).map((name) => [name, 'entered']))
const nothing = Object.fromEntries(Object.keys(asked).map((name) => [name, '']))

describe('a page that reaches for the helper', () => {
  test('reads nothing of it, and its clicks and keys do nothing', async () => {
    const page = await visit('reads')
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
  })

  test('sends messages of every kind and is heard by nobody', async () => {
    const page = await visit('messages')
    const ui = await attacked.plan(page)
    expect(await attack(page, attacked.session.extension.id)).toEqual([])
    await new Promise((done) => setTimeout(done, 500))
    await ui.wait(/Nothing is typed until you confirm/)
    expect(await ui.text()).not.toMatch(/Evil/)
    expect((await heldBy(page)).named).toEqual(nothing)
    const { page: book } = await attacked.session.openPage('/book.html#maps')
    await book.waitForFunction('document.body.innerText.includes("Permit sheet")')
    expect(await book.evaluate('document.body.innerText')).not.toMatch(/Evil/)
    await book.close()
  })

  test('throws the helper out each time: the page does not hang, and what is shown comes back', async () => {
    const page = await visit('evicts')
    const ui = await attacked.plan(page)
    await attack(page)
    await lives(page)
    expect(Number(await page.evaluate('evicted'))).toBeLessThan(500)
    expect((await heldBy(page)).named).toEqual(nothing)
    await page.evaluate('window.resting = true')
    await ui.wait(/Nothing is typed until you confirm/)
  })

  test('puts its whole document in anew: the helper stays and fills the new one', async () => {
    const page = await visit('wipes')
    const { lines } = await attacked.fill(page, () => attack(page))
    expect(outcomesOf(lines)).toEqual(allEntered)
  })

  test('lays a sheet over the helper: the helper comes to the top again', async () => {
    const page = await visit('veils')
    const ui = await attacked.plan(page)
    await attack(page)
    await new Promise((done) => setTimeout(done, 500))
    expect(Number(await page.evaluate('helperOnTop()'))).toBeGreaterThan(20)
    await ui.wait(/Nothing is typed until you confirm/)
  })
})

describe('a page whose own scripts cannot be trusted', () => {
  test('overrides what every script is built on, and is filled all the same', async () => {
    const page = await visit('overrides')
    const { lines } = await attacked.fill(page)
    expect(outcomesOf(lines)).toEqual(allEntered)
    expect(await page.evaluate('window.caught')).toEqual([])
  })

  test('names its fields after what scripts ask of forms, and is filled all the same', async () => {
    const { lines } = await attacked.fill(await visit('clobbers'))
    expect(outcomesOf(lines)).toEqual(allEntered)
  })

  test('throws at every event and setter: each line says what the page did', async () => {
    const { lines } = await attacked.fill(await visit('throws'))
    expect(outcomesOf(lines)).toEqual({ ...allEntered, town: 'refused', cfm50: 'differs', licence: 'refused' })
  })

  test('forbids all styles, scripts and markup by its policy, and is filled all the same', async () => {
    const page = await visit('strict')
    const { lines, ui } = await attacked.fill(page)
    expect(outcomesOf(lines)).toEqual(allEntered)
    expect(await ui.text()).toMatch(/Nothing was submitted/)
  })

  test('takes the focus to a field that nobody sees: nothing is typed there', async () => {
    const { lines, held } = await attacked.fill(await visit('steals'))
    expect(held.others).toEqual([])
    expect(lines.length).toBe(7)
  })
})

describe('a page that changes what is filled', () => {
  test('exchanges labels during the fill: no text goes under a label that it is not for', async () => {
    const page = await visit('swaps')
    // What the page calls tester now was the control of the licence number, and the other way round.
    const names = { ...asked, tester: asked['licence']!, licence: asked['tester']! }
    const { lines, held } = await attacked.fill(page, undefined, names)
    // By the exchanged labels, the control once called tester is the one for the licence number now.
    expect(['', asked['licence']?.text]).toContain(held.named['tester'])
    expect(['', asked['tester']?.text]).toContain(held.named['licence'])
    // The heading speaks of another test now.
    expect(outcomesOf(lines)['cfm50']).toBe('not found')
    expect(held.named['cfm50']).toBe('')
  })

  test('exchanges controls under the press on Fill: the plan is shown anew and nothing is typed', async () => {
    const page = await visit('replaces')
    const ui = await attacked.plan(page)
    await page.evaluate('window.armed = true')
    await ui.click('button', /^Fill \d+ controls?$/)
    await ui.wait(/The page has changed since this plan was shown/)
    expect((await heldBy(page)).named).toEqual(nothing)
  })

  test('hides controls while others are filled: what cannot be seen is refused in a sentence', async () => {
    const page = await visit('hides')
    const { lines, held, ui } = await attacked.fill(page)
    expect(outcomesOf(lines)).toEqual({ ...allEntered, ...hiddenLater })
    for (const name of Object.keys(hiddenLater)) expect([name, held.named[name]]).toEqual([name, ''])
    expect(await ui.text()).toMatch(/cannot be seen/)
  })

  test('has hidden them before the plan is opened: none of them is written', async () => {
    const page = await visit('hides', '&when=before')
    const { held } = await attacked.fill(page)
    expect(held.named).toEqual({ ...nothing, street: asked['street']?.text })
  })

  test('stands lookalikes that nobody sees beside every control: they get nothing', async () => {
    const { lines, held } = await attacked.fill(await visit('twins'))
    expect(held.others).toEqual([])
    expect(outcomesOf(lines)).toEqual(allEntered)
  })

  test('draws itself anew without end: the fill ends, and the receipt is true', async () => {
    const page = await visit('redraws')
    const { lines } = await attacked.fill(page)
    expect(lines.length).toBe(7)
  })

  test('grows at its end: the fill does not make it grow', async () => {
    const page = await visit('scrolls')
    const { lines } = await attacked.fill(page)
    expect(outcomesOf(lines)).toEqual(allEntered)
    expect(await page.evaluate('grown')).toBe(0)
  })
})

const hiddenLater = {
  town: 'refused',
  volume: 'refused',
  date: 'refused',
  cfm50: 'refused',
  tester: 'refused',
  licence: 'refused',
}

describe('a page that goes away', () => {
  test('leaves for another address in the middle: the book says how far it came', async () => {
    const page = await visit('leaves')
    const ui = await attacked.plan(page)
    await ui.click('button', /^Fill \d+ controls?$/)
    await page.waitForNavigation()
    await helper(page)
    expect((await heldBy(page)).named).toEqual(nothing)
    const { page: book } = await attacked.session.openPage('/book.html')
    await page.close()
    open.length = 0
    // The fill that was cut off becomes an entry as soon as its tab is gone.
    const newest = async () =>
      (await book.evaluate(`new Promise((resolve) => {
        const opening = indexedDB.open('gapsum')
        opening.onsuccess = () => {
          const reading = opening.result.transaction('entries').objectStore('entries').openCursor(null, 'prev')
          reading.onsuccess = () => resolve(reading.result?.value)
        }
      })`)) as { complete: boolean; planned: unknown[]; lines: { outcome: string }[] }
    const entry = await until(async () => {
      const found = await newest()
      return found.complete ? undefined : found
    })
    expect(entry?.planned.length).toBe(7)
    expect(entry?.lines.length).toBeGreaterThan(0)
    expect(entry?.lines.length).toBeLessThan(7)
    expect(entry?.lines.every(({ outcome }) => outcome === 'entered')).toBe(true)
    await book.close()
  })

  test('takes the frame with the form away in the middle: each line says so', async () => {
    const page = await visit('frame')
    const { lines } = await attacked.fill(page)
    expect(lines.length).toBe(7)
    expect(lines.every(({ outcome }) => outcome !== 'entered')).toBe(true)
    await truthful(page, lines)
  })
})

describe('a page without measure', () => {
  test('holds its form in fifty frames, one in the other, and is filled', async () => {
    const { lines } = await attacked.fill(await visit('nested'))
    expect(outcomesOf(lines)).toEqual(allEntered)
  })

  test('has a hundred thousand controls, and is filled', async () => {
    const { lines } = await attacked.fill(await visit('many'))
    expect(outcomesOf(lines)).toEqual(allEntered)
  })
})
