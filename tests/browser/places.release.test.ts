/**
 * The pages of tests/pages/places through the real action of the built extension: tables without labels, the same label
 * twice, nested shadow roots, a library of web components, frames, pages that draw themselves anew, forms in steps.
 */
import type { Page } from 'puppeteer-core'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import type { FormMap } from '../../lib/form/schema.ts'
import { startPlaces, type Places } from '../pages/places/server.ts'
import { launchAllowed } from './allowed.ts'
import { helper, launch, type Session } from './harness.ts'
import { bindClear, mapAndFill, mapClear, states, wanted } from './places.ts'
import { confirm, openDemo, openPlan, type Line } from './round.ts'

let session: Session
let places: Places
const open: Page[] = []

beforeAll(async () => {
  ;[session, places] = await Promise.all([launch(), startPlaces()])
})

afterEach(async () => {
  for (const page of open.splice(0)) await page.close()
})

afterAll(async () => {
  await session?.close()
  await places?.close()
})

async function visit(path: string): Promise<Page> {
  const page = await session.open(`${places.origin}/${path}`)
  open.push(page)
  return page
}

/** The form map of that name as the book keeps it now. */
async function kept(name: string): Promise<FormMap> {
  const book = await session.openPage('/book.html')
  const maps = await book.page.evaluate(
    () =>
      new Promise<FormMap[]>((resolve, reject) => {
        const opening = indexedDB.open('gapsum')
        opening.addEventListener('error', () => reject(opening.error ?? new Error('The book did not open.')))
        opening.addEventListener('success', () => {
          const asking = opening.result.transaction('maps').objectStore('maps').getAll()
          asking.addEventListener('success', () => {
            opening.result.close()
            resolve(asking.result)
          })
        })
      }),
  )
  await book.page.close()
  const newest = maps.filter((map) => map.name === name).toSorted((a, b) => b.version - a.version)[0]
  if (!newest) throw new Error(`The book keeps no form map ${name}.`)
  return newest
}

/** Every line entered, and the page's own state as the job has it. */
function check(lines: readonly Line[], state: Record<string, unknown>, keys: readonly string[]): void {
  expect(lines.filter(({ outcome }) => outcome !== 'entered' && outcome !== 'already there')).toEqual([])
  for (const key of keys)
    expect([key, wanted[key]?.includes(String(state[key])), state[key]]).toEqual([key, true, state[key]])
}

const pages: [page: string, keys: string[]][] = [
  [
    'tables.html',
    [
      'street',
      'area',
      'volume',
      'before date',
      'after date',
      'before cfm50',
      'after cfm50',
      'before ach50',
      'after ach50',
      'tester',
      'licence',
    ],
  ],
  [
    'legends.html',
    ['before date', 'after date', 'before cfm50', 'after cfm50', 'before ach50', 'after ach50', 'duct 1 flow'],
  ],
  ['agency.html', ['street', 'town', 'volume', 'tester', 'licence']],
  ['shadow.html', ['street', 'volume', 'before cfm50', 'before date', 'after cfm50', 'after date']],
  ['components.html', ['street', 'area', 'volume', 'date', 'cfm50', 'ach50', 'licence']],
  ['postback.html', ['street', 'volume', 'before cfm50', 'before ach50', 'after cfm50', 'after ach50']],
  ['frames.html', ['street', 'volume', 'after date', 'after cfm50']],
]

test.each(pages)('%s: what is clear is proposed, filled and right in the page’s own state', async (path, keys) => {
  const page = await visit(path)
  const { lines, state, ui } = await mapAndFill(session, page)
  check(lines, state, keys)
  expect(places.posts()).toBe(0)
  await ui.click('button', 'Copy list')
  const copied = (await ui.text()).split('\n')
  for (const { intended } of lines) expect(copied).toContain(intended)
})

describe('a form in steps', () => {
  test('on one address: each step is filled as it comes, and one click goes on', async () => {
    const page = await visit('wizard.html')
    const mapping = await mapClear(session, page)
    // The person fills the steps by hand once, so that the page shows the next ones while they are mapped.
    const goOn = async () => {
      for (const input of await page.$$('#step input')) {
        const type = await input.evaluate((each) => each.type)
        await input.evaluate(
          (each, text) => {
            each.value = text
            each.dispatchEvent(new Event('input', { bubbles: true }))
          },
          type === 'date' ? '2020-01-01' : '1',
        )
      }
      await page.evaluate(() => document.querySelector<HTMLButtonElement>('#next')?.click())
    }
    await goOn()
    await mapping.wait(/0 of 4 controls bound/)
    await bindClear(mapping)
    await goOn()
    await mapping.wait(/0 of 5 controls bound/)
    await bindClear(mapping)
    await page.close()
    open.length = 0

    const again = await visit('wizard.html')
    const ui = await openPlan(session, again)
    expect(await ui.text()).toMatch(/Step 1 of 3: 5 of 1\d controls are here/)
    check(await confirm(ui), await states(again), ['street', 'town', 'area', 'volume'])
    await again.evaluate(() => document.querySelector<HTMLButtonElement>('#next')?.click())
    await ui.click('button', 'Go on: step 2 of 3')
    await ui.wait(/Step 2 of 3/)
    const second = await confirm(ui)
    check(second, await states(again), ['date', 'cfm50', 'ach50'])
  })

  test('on addresses of their own: the map spans them, the popup says where one is', async () => {
    const page = await visit('walk/site')
    let mapping = await mapClear(session, page)
    await mapping.click('button', 'Close')
    for (const at of ['test', 'tester']) {
      await page.goto(`${places.origin}/walk/${at}`)
      const popup = await session.openPopup(page)
      await popup.wait(/No form map for this page yet/)
      await popup.choose('This page is', /^a further step of Rebate, step 1/)
      await popup.click('button', 'Map this page')
      mapping = await helper(page)
      await bindClear(mapping)
      await mapping.click('button', 'Close')
    }
    await page.goto(`${places.origin}/walk/site`)
    check(await confirm(await openPlan(session, page)), await states(page), ['street', 'town', 'volume'])
    await page.goto(`${places.origin}/walk/test`)
    const popup = await session.openPopup(page)
    await popup.wait(/4 of 7 left/)
    await popup.click('button', 'Fill this page')
    const ui = await helper(page)
    await ui.wait(/Step 2 of 3/)
    const last = await confirm(ui)
    expect(last).toHaveLength(2)
    check(last, await states(page), ['cfm50', 'ach50'])
  })
})

test('a page that submits itself on a change: the plan warns, and after the reload the rest is filled', async () => {
  const page = await visit('reload')
  const mapping = await mapClear(session, page)
  await mapping.click('button', /^\d+ ?Stage/)
  await mapping.click('radio', 'Fixed text')
  await mapping.choose('Text to enter', 'Final')
  await mapping.click('button', 'Bind, then next')
  await mapping.wait(/4 of 4 controls bound/)
  if (await mapping.has('button', 'All controls')) await mapping.click('button', 'All controls')
  await mapping.click('button', 'Close')
  const ui = await openPlan(session, page)
  expect(await ui.text()).toMatch(/the page reloads itself when this changes/)
  await ui.click('button', /^Fill \d+ controls?$/)
  await page.waitForNavigation()
  const again = await openPlan(session, page)
  check(await confirm(again), await states(page), ['street', 'volume'])
  expect(places.posts()).toBe(0)
})

test('a control that was chosen in the plan is of a kind that no binding names: its writer is fetched', async () => {
  const page = await visit('redrawn.html')
  const mapping = await mapClear(session, page)
  await mapping.click('button', 'Close')
  const redesigned = await visit('redrawn.html#redesigned')
  const ui = await openPlan(session, redesigned)
  await ui.wait(/2 controls fit equally well/)
  await ui.click('button', 'the lower one')
  const lines = await confirm(ui)
  expect(lines).toEqual([expect.objectContaining({ readBack: '3', outcome: 'entered' })])
  expect(await states(redesigned)).toEqual({ below: '3' })
})

test('a control in other words is asked about, and the form map keeps the answer at the press of Fill', async () => {
  const { version } = await kept('Sheet that is drawn anew')
  const reworded = await visit('redrawn.html#reworded')
  const asked = await openPlan(session, reworded)
  await asked.wait(/not on the page under this name: is it one of these\?/)
  expect(await asked.text()).not.toMatch(/Fill 1 control/)
  await asked.click('button', '“How many bedrooms?”')
  await asked.get('button', 'Fill 1 control')
  expect((await kept('Sheet that is drawn anew')).version).toBe(version)
  expect(await confirm(asked)).toEqual([expect.objectContaining({ readBack: '3', outcome: 'entered' })])
  expect(await states(reworded)).toEqual({ rooms: '3' })
  expect(await kept('Sheet that is drawn anew')).toMatchObject({
    version: version + 1,
    bindings: [{ control: { name: 'How many bedrooms?' } }],
  })
  const again = await openPlan(session, await visit('redrawn.html#reworded'))
  await again.get('button', 'Fill 1 control')
  expect(await again.text()).not.toMatch(/is it one of these/)
})

test('proposals stay when the page draws the same controls anew', async () => {
  // Its book holds no map of this page.
  const fresh = await launch()
  try {
    const page = await fresh.open(`${places.origin}/agency.html`)
    await (await openDemo(fresh, page)).click('button', 'Map this page')
    const ui = await helper(page)
    await ui.click('button', 'Propose for all')
    await ui.wait(/7 of the 12 controls/)
    await page.evaluate(() =>
      document.querySelector('form')?.replaceWith(document.querySelector('form')!.cloneNode(true)),
    )
    // By then the controls are listed again.
    await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 1500)))
    expect(await ui.text()).toContain('7 of the 12 controls not bound yet have one figure or field that clearly fits')
    await ui.click('button', 'Bind these 6')
    await ui.wait(/6 of 12 controls bound/)
  } finally {
    await fresh.close()
  }
})

test('what is drawn later is listed too: in a frame, in a frame that loads anew, in a shadow root', async () => {
  const page = await visit('frames.html')
  await (await openDemo(session, page)).click('button', 'Map this page')
  const ui = await helper(page)
  await ui.wait(/of 7 controls bound/)
  const frame = (name: string) => page.frames().find((each) => each.url().endsWith(name))
  await frame('frame-inner.html')?.evaluate(() => {
    const late = document.createElement('p')
    late.innerHTML = '<label>House pressure <input></label>'
    document.body.append(late)
  })
  await ui.wait(/of 8 controls bound/)
  await frame('frame-outer.html')?.evaluate(() => {
    document.querySelector('iframe')?.setAttribute('src', 'agency.html')
  })
  await ui.wait(/of 15 controls bound/)
  await page.evaluate(() => {
    const root = document.body.appendChild(document.createElement('late-part')).attachShadow({ mode: 'closed' })
    root.innerHTML = '<label>Town of the late part <input></label>'
    // The page never rests meanwhile.
    setInterval(() => root.querySelector('label')?.classList.toggle('lit'), 100)
    setTimeout(() => root.append(document.createElement('input')), 1500)
  })
  await ui.wait(/of 16 controls bound/)
  expect(await ui.wait(/of 17 controls bound/)).toContain('Town of the late part')
})

describe('a frame of another origin', () => {
  test('is said to be closed, and the way to allow it is one click away', async () => {
    const page = await visit('embedding.html')
    await (await openDemo(session, page)).click('button', 'Map this page')
    const ui = await helper(page)
    await ui.wait(new RegExp(`a frame of ${places.other}, which Gapsum cannot see`))
    await ui.click('button', 'Ask to see it')
    const book = await session.waitForPage('/book.html')
    await book.get('button', `Allow frames of ${places.other}`)
    expect(await book.text()).toMatch(/No site is allowed/)
    await book.page.close()
  })

  test('that is allowed is mapped, filled and read back like the page itself', async () => {
    const { session: allowed, close } = await launchAllowed()
    try {
      const page = await allowed.open(`${places.origin}/embedding.html`)
      await (await openDemo(allowed, page)).click('button', 'Map this page')
      const mapping = await helper(page)
      await mapping.wait(/0 of 7 controls bound/)
      await bindClear(mapping)
      await mapping.click('button', 'Close')
      await mapping.gone()
      const ui = await openPlan(allowed, page)
      const lines = await confirm(ui)
      check(lines, await states(page), ['street', 'volume', 'after date', 'after cfm50', 'after range'])
      expect(lines.length).toBeGreaterThanOrEqual(6)
      await ui.click('button', 'Close')
      await ui.gone()
      const frame = page.frames().find((each) => each.url().startsWith(places.other))
      expect(await frame?.evaluate(() => document.querySelectorAll('gapsum-helper').length)).toBe(0)
    } finally {
      await close()
    }
  })
})

describe('before and after', () => {
  test('nothing is put into a page until the person acts, and closing leaves it as it was', async () => {
    const page = await visit('tables.html')
    const picture = () =>
      page.evaluate(() => ({
        html: document.documentElement.outerHTML,
        children: document.documentElement.children.length,
      }))
    const before = await picture()
    const popup = await session.openPopup(page)
    await popup.get('button', 'Open book')
    expect(await picture()).toEqual(before)
    await popup.page.close()
    // Listeners belong to the world that added them: the helper's is not the page's.
    const cdp = await page.createCDPSession()
    const worlds = new Set<number>()
    cdp.on('Runtime.executionContextCreated', ({ context }) => worlds.add(context.id))
    cdp.on('Runtime.executionContextDestroyed', ({ executionContextId }) => worlds.delete(executionContextId))
    await cdp.send('Runtime.enable')
    const listeners = async () => {
      const found: string[] = []
      for (const contextId of worlds)
        for (const expression of ['window', 'document', 'document.documentElement', 'document.body']) {
          const { result } = await cdp.send('Runtime.evaluate', { expression, contextId })
          const { listeners: all } = await cdp.send('DOMDebugger.getEventListeners', {
            objectId: result.objectId ?? '',
          })
          found.push(...all.map(({ type }) => `${expression} ${type}`))
        }
      return found.toSorted()
    }
    const heard = await listeners()
    await (await openDemo(session, page)).click('button', 'Map this page')
    const mapping = await helper(page)
    await mapping.wait(/Pick a control/)
    expect((await listeners()).length).toBeGreaterThan(heard.length)
    await mapping.click('button', 'Close')
    await mapping.gone()
    expect(await picture()).toEqual(before)
    expect(await listeners()).toEqual(heard)
  })
})
