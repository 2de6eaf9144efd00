/** What a tester does house after house, and what must hold in each state on the way. */
import { afterEach, beforeEach, expect, it as test } from 'vitest'
import { launch, type Session, type Surface } from './harness.ts'
import { sweep } from './sweep.ts'

let session: Session
beforeEach(async () => {
  session = await launch()
})
afterEach(() => session.close())

const cell = (name: string) => new RegExp(`^${name}, point 1`)

async function read(view: Surface, pressure: string, flow: string, volume: string): Promise<void> {
  await view.type('textbox', cell('House pressure'), pressure)
  await view.type('textbox', cell('Flow'), flow)
  await view.type('textbox', /^Volume/, volume)
}

/** Whether what has the focus lies in the window, and is no page at large. */
const focusSeen = (view: Surface) =>
  view.page.evaluate(() => {
    const holder = document.activeElement
    const box = holder?.getBoundingClientRect()
    return holder !== document.body && box !== undefined && box.top >= 0 && box.bottom <= innerHeight
  })

test('reaches a verdict in two presses after the readings, and the next house needs no set-up', async () => {
  const view = await session.openPage('/popup.html')
  await view.page.setViewport({ width: 420, height: 600 })
  await view.click('button', 'Start a job')
  await view.wait(/Before the first reading/)
  await read(view, '-50', '433', '8726')
  await view.wait(/2\.98/)
  await view.choose('Limit', /^3\.0 ACH50: IECC 2018/)
  await view.wait(/Meets the limit, 3\.0 ACH50/)
  // The arrow keys go through the list one by one: it stays while it has the focus, though there is a verdict by now.
  expect(await view.focused()).toMatchObject({ name: 'Limit', kind: 'select' })
  expect(await view.text()).not.toMatch(/Before the first reading/)

  await view.click('button', 'Next house, same set-up')
  await view.wait(/Job without an address[\s\S]*Before the first reading/)
  await read(view, '-50', '470', '8726')
  expect(await view.wait(/Does not meet the limit, 3\.0 ACH50/)).not.toMatch(/2\.98/)
})

test('adds the other direction and the next duct system in one press each, and names them apart', async () => {
  const view = await session.openPage('/popup.html')
  await view.page.setViewport({ width: 420, height: 600 })
  await view.click('button', 'Start a job')
  await view.wait(/Before the first reading/)
  await read(view, '-50', '433', '8726')
  await view.click('button', 'Other direction, same set-up')
  expect(await view.wait(/before, depressurize\s+before, pressurize/)).not.toMatch(/Other direction/)
  await view.page.waitForFunction(() => document.activeElement?.matches('[data-column="pressure"]'))
  await read(view, '50', '455', '8726')
  await view.wait(/before, both directions/)

  await view.click('button', 'Add a test')
  await view.choose('Test of', 'ducts')
  await view.click('button', 'Add test')
  await view.type('textbox', /^Duct pressure, point 1/, '25')
  await view.type('textbox', cell('Flow'), '71')
  await view.click('button', 'Next duct system, same set-up')
  await view.wait(/duct system 1\s+duct system 2/)
  await view.type('textbox', /^Duct pressure, point 1/, '25')
  await view.type('textbox', cell('Flow'), '40')
  await view.choose('Limit', /IECC 2021, ducts.*total/)
  await view.wait(/Type the floor area/)
  await view.type('textbox', /^Floor area served/, '1500')
  await view.wait(/2\.7[\s\S]*whole house[\s\S]*Choose the same limit for all systems/)
})

test('proposes pressurize and a duct role for a first test that is switched to ducts', async () => {
  const view = await session.openPage('/popup.html')
  await view.click('button', 'Start a job')
  await view.wait(/Readings/)
  await view.fold('setup')
  await view.choose('Test of', 'ducts')
  expect(await view.wait(/Ducts, total leakage, one-point, pressurize/)).toMatch(/duct system 1/)
})

test.each(['en-US', 'es'])('has all cautions in sight before the first reading, in a popup in %s', async (language) => {
  await session.close()
  session = await launch({ language })
  const view = await session.openPage('/popup.html')
  await view.page.setViewport({ width: 400, height: 600 })
  await view.click('button', /^(Start a job|Empezar un trabajo)/)
  /** The cautions that are cut off, covered, or in a box that scrolls. */
  const hidden = () =>
    view.page.evaluate(() =>
      [...document.querySelectorAll('.care li')]
        .filter((one) => {
          const boxes = [...one.getClientRects()]
          const box = one.closest('.care')?.querySelector('ul')
          const whole = boxes.every(
            ({ left, right, top, bottom }) =>
              top >= 0 &&
              bottom <= innerHeight &&
              one.contains(document.elementFromPoint((left + right) / 2, bottom - 4)),
          )
          return !whole || !box || box.scrollHeight > box.clientHeight
        })
        .map((one) => one.textContent),
    )
  await view.page.waitForSelector('.care li')
  expect(await view.page.$$eval('.care li', (all) => all.length)).toBe(9)
  expect(await hidden()).toEqual([])
  expect(await view.page.evaluate('scrollY')).toBe(0)
  await view.fold('setup')
  await (await view.page.waitForSelector('#setup select'))!.select('ducts')
  await view.fold('setup')
  await view.page.waitForFunction(() => document.querySelectorAll('.care li').length === 10)
  await view.page.evaluate('scrollTo(0, 0)')
  expect(await hidden()).toEqual([])
})

test('leaves at least half of a small sidebar beside its bars, whatever is told in them', async () => {
  const view = await session.openPage('/sidepanel.html')
  await view.click('button', 'Open the demo job')
  await view.wait(/Figures/)
  for (const [width, height] of [
    [320, 400],
    [320, 480],
    [320, 568],
    [320, 700],
    [360, 640],
    [420, 720],
  ] as const) {
    await view.page.setViewport({ width, height })
    await view.page.focus('.rd tbody button')
    await view.page.evaluate(() => document.querySelector<HTMLButtonElement>('.rd tbody button')?.click())
    await view.get('button', 'Undo')
    const free = await view.page.evaluate(() => {
      const stays = [...document.querySelectorAll('.bar-top, .low-bar, .undo')].filter((one) =>
        ['sticky', 'fixed'].includes(getComputedStyle(one).position),
      )
      const covered = new Set<number>()
      for (const one of stays) {
        const { top, bottom } = one.getBoundingClientRect()
        for (let at = Math.max(0, Math.round(top)); at < Math.min(innerHeight, bottom); at++) covered.add(at)
      }
      return (innerHeight - covered.size) / innerHeight
    })
    expect({ height, free, half: free >= 0.5 }).toMatchObject({ height, half: true })
    await view.click('button', 'Undo')
  }
})

test('begins a new job with the set-up that is kept in Settings', async () => {
  const book = await session.openPage('/book.html#settings')
  await book.choose('Procedure', /^ASTM E779/)
  await book.choose('Stage', 'final')
  await book.choose('Limit', /IECC 2021, house, any path/)
  await book.type('textbox', 'Uncertainty of flow, %', '3')
  await book.page.reload()
  await book.wait(/Set-up of a new job/)
  const view = await session.openPage('/popup.html')
  await view.click('button', 'Start a job')
  expect(await view.wait(/ASTM E779, depressurize[\s\S]*Before the first reading/)).toMatch(/Enclosure/)
  await view.fold('setup')
  await view.page.waitForSelector('#limit')
  expect(
    await view.page.$$eval('#setup select, #setup input', (all) =>
      all.map((one) => one.value).filter((value) => ['final', '3', 'iecc-2021-air-changes'].includes(value)),
    ),
  ).toEqual(['final', 'iecc-2021-air-changes', '3'])
})

test('keeps the focus in the window after a press, with the set-up open', async () => {
  const view = await session.openPage('/popup.html')
  await view.page.setViewport({ width: 420, height: 600 })
  await view.click('button', 'Start a job')
  await view.wait(/Readings/)
  await view.fold('setup')
  await view.get('combobox', 'Procedure')
  await read(view, '-50', '433', '')
  for (const press of ['Sizes of the building', 'Next house, same set-up', 'Add a test', 'Add test']) {
    await view.click('button', press)
    await view.page.waitForFunction(() => document.activeElement !== document.body)
    await view.page.waitForNetworkIdle({ idleTime: 200 })
    expect({ press, seen: await focusSeen(view) }).toEqual({ press, seen: true })
  }
  const before = await view.page.evaluate('scrollY')
  await view.page.reload()
  await view.get('combobox', 'Procedure')
  await view.page.waitForFunction(`Math.abs(scrollY - ${String(before)}) < 2`)
})

test('offers no button without effect where the only test of a job was deleted', async () => {
  const view = await session.openPage('/popup.html')
  await view.click('button', 'Start a job')
  await view.wait(/Before the first reading/)
  await view.click('button', /^before/)
  await view.click('button', 'Delete this test')
  await view.get('button', 'Add test')
  expect(await view.text()).not.toMatch(/Cancel|Report/)
  await view.click('button', 'Add test')
  await view.get('button', 'Report')
})

test('comes from the last reading to the book in at most twelve Tabs', async () => {
  const view = await session.openPage('/popup.html')
  await view.click('button', 'Open the demo job')
  await view.wait(/Figures/)
  await view.page.evaluate(() => {
    const cells = document.querySelectorAll<HTMLElement>('.rd tbody [data-column="flow"]')
    cells[cells.length - 1]?.focus()
  })
  let tabs = 0
  for (; tabs < 60 && (await view.focused())?.name !== 'Open book'; tabs++) await view.key('Tab')
  expect(tabs).toBeLessThanOrEqual(12)
})

test('has no id twice, no field without name or edge, in any part of calculator and book', async () => {
  const view = await session.openPage('/popup.html')
  expect(await sweep(view.page)).toEqual([])
  await view.click('button', 'Open the demo job')
  await view.wait(/Figures/)
  await view.page.evaluate(() => {
    for (const one of document.querySelectorAll('details')) one.open = true
  })
  await view.get('combobox', 'Procedure')
  expect(await sweep(view.page)).toEqual([])
  for (const press of [/^Job: /, 'Add a test', 'Add a device']) {
    await view.click('button', press)
    await view.page.waitForNetworkIdle({ idleTime: 200 })
    await view.page.evaluate(() => {
      for (const one of document.querySelectorAll('details')) one.open = true
    })
    expect({ press, found: await sweep(view.page) }).toEqual({ press, found: [] })
  }
  for (const section of ['entries', 'jobs', 'maps', 'devices', 'limits', 'review', 'settings', 'report?job=demo-job']) {
    const book = await session.openPage(`/book.html#${section}`)
    await book.page.waitForSelector('main > *')
    await book.page.evaluate(() => {
      for (const one of document.querySelectorAll('details')) one.open = true
    })
    expect({ section, found: await sweep(book.page) }).toEqual({ section, found: [] })
    await book.close()
  }
})
