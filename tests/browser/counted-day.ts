/** What a day's work costs in clicks, keys and Tabs, counted while it is done in the built extension. */
import type { Page } from 'puppeteer-core'
import type { Session, Surface } from './harness.ts'
import { until, type Name } from './surface.ts'

/** What one part of a day took. A list that is opened and picked from is two clicks. */
export interface Count {
  clicks: number
  /** Keys of what is typed. */
  keys: number
  tabs: number
}

const cell = (name: string, row = 1) => new RegExp(`^${name}, point ${row}(,|$)`)

/** One hand at the mouse, one at the keys: goes from cell to cell by Tab, and clicks buttons and lists. */
class Counted {
  count: Count = { clicks: 0, keys: 0, tabs: 0 }

  /** What was counted since the last time. */
  taken(): Count {
    const now = this.count
    this.count = { clicks: 0, keys: 0, tabs: 0 }
    return now
  }

  async click(view: Surface, name: Name, role = 'button'): Promise<void> {
    this.count.clicks++
    await view.click(role, name)
  }

  async choose(view: Surface, name: Name, option: Name): Promise<void> {
    this.count.clicks += 2
    await view.choose(name, option)
  }

  async tabTo(view: Surface, name: RegExp): Promise<void> {
    for (let step = 0; step < 40; step++) {
      const at = await view.focused()
      if (at && name.test(at.name)) return
      this.count.tabs++
      await view.key('Tab')
    }
    throw new Error(`No Tab came to ${String(name)}.`)
  }

  /** Types into the cell that has the focus, or that Tabs lead to. */
  async type(view: Surface, name: RegExp, text: string): Promise<void> {
    await this.tabTo(view, name)
    this.count.keys += text.length
    await view.page.keyboard.type(text)
  }
}

/** Waits until the first cell of the readings has the focus, which no hand gave it. */
async function atFirstCell(view: Surface): Promise<void> {
  const there = await until(async () => ((await view.focused())?.name.match(/pressure, point 1/) ? true : undefined))
  if (!there) throw new Error(`The focus is not in the first cell but at ${JSON.stringify(await view.focused())}.`)
}

/** (a) From an extension that was just installed to the first verdict. */
export async function firstVerdict(view: Surface): Promise<{ before: Count; readings: Count; after: Count }> {
  const hand = new Counted()
  await hand.click(view, 'Start a job')
  const before = hand.taken()
  await atFirstCell(view)
  await hand.type(view, cell('House pressure'), '-50')
  await hand.type(view, cell('Flow'), '433')
  await hand.type(view, /^Volume/, '8726')
  await view.wait(/2\.98/)
  const readings = hand.taken()
  await hand.choose(view, 'Limit', /^3\.?0? ACH50: IECC 2018/)
  await view.wait(/Meets the limit, 3\.0 ACH50/)
  return { before, readings, after: hand.taken() }
}

/** (b) The next house of the day after that, and its rebate form, which was mapped once before. */
async function nextHouse(
  session: Session,
  form: string,
  flow: string,
): Promise<{ begin: Count; readings: Count; setUp: Count; fill: Count; entered: string }> {
  const hand = new Counted()
  const page = await session.open(form)
  const view = await session.openPopup(page)
  await hand.click(view, 'Next house, same set-up')
  const begin = hand.taken()
  await atFirstCell(view)
  await hand.type(view, cell('House pressure'), '-50')
  await hand.type(view, cell('Flow'), flow)
  await hand.type(view, /^Volume/, '8726')
  const readings = hand.taken()
  await view.wait(/[Mm]eets? the limit, 3\.0 ACH50/)
  const setUp = hand.taken()
  const { entered, fill } = await filled(session, page, view)
  await page.close()
  return { begin, readings, setUp, fill, entered }
}

/** Opening the popup counts as the first act of a form, though it may be open still. */
async function filled(session: Session, page: Page, view: Surface): Promise<{ fill: Count; entered: string }> {
  const hand = new Counted()
  hand.count.clicks++
  await view.wait(/\d+ (bindings?|of \d+ left)/)
  await hand.click(view, 'Fill this page')
  const ui = await session.helper(page)
  await ui.wait(/Nothing is typed until you confirm/)
  await hand.click(ui, /^Fill [1-9]\d* controls?$/)
  return { entered: await ui.wait(/controls? entered/), fill: hand.taken() }
}

/** The first house, its form mapped, then one house for each of `flows`. */
export async function houses(
  session: Session,
  form: string,
  flows: readonly string[],
): Promise<Awaited<ReturnType<typeof nextHouse>>[]> {
  const view = await session.openPage('/popup.html')
  await firstVerdict(view)
  await view.close()
  await mapOnce(session, form, async (ui) => {
    await ui.click('button', 'Propose for all')
    await ui.click('button', /^Bind these [1-9]/)
  })
  const all = []
  for (const flow of flows) all.push(await nextHouse(session, form, flow))
  return all
}

/** Binds the comments of the form to the verdict on the sum, the only one that there is. */
export async function bindSum(ui: Surface): Promise<void> {
  await ui.click('button', /Comments/)
  await ui.wait(/What goes into/)
  await ui.type('searchbox', 'Find a figure or job field', 'verdict')
  await ui.click('radio', /^verdict Pass/)
  await ui.click('button', 'Bind, then next')
}

/** Maps a page once; what `bind` does is not counted. */
async function mapOnce(session: Session, form: string, bind: (ui: Surface) => Promise<void>): Promise<void> {
  const page = await session.open(form)
  const view = await session.openPopup(page)
  await view.click('button', 'Map this page')
  const ui = await session.helper(page)
  await ui.wait(/Pick a control/)
  await bind(ui)
  await ui.wait(/kept/)
  if (await ui.has('button', 'All controls')) await ui.click('button', 'All controls')
  await ui.click('button', /^Close/)
  await ui.gone()
  await page.close()
}

/** (c) Two duct systems at rough-in in a job that has none, to the verdict on their sum in a form. */
export async function twoSystems(
  session: Session,
  form: string,
  bind: (ui: Surface) => Promise<void>,
): Promise<{ first: Count; second: Count; fill: Count; said: string; entered: string }> {
  const hand = new Counted()
  const begun = await session.openPage('/popup.html')
  await hand.click(begun, 'Start a job')
  await atFirstCell(begun)
  await hand.click(begun, /^Set-up|^Enclosure/, 'DisclosureTriangle')
  await hand.choose(begun, 'Test of', 'ducts')
  await hand.choose(begun, 'Stage', /rough/)
  await hand.choose(begun, 'Limit', /4\.0 cfm25 per 100 ft²: IECC 2021, ducts, rough-in/)
  await begun.page.focus('.vol input')
  await hand.type(begun, /^Floor area served/, '1200')
  await hand.type(begun, /^Duct pressure, point 1/, '25')
  await hand.type(begun, cell('Flow'), '40')
  const first = hand.taken()
  await hand.click(begun, 'Next duct system, same set-up')
  await atFirstCell(begun)
  await hand.type(begun, /^Duct pressure, point 1/, '25')
  await hand.type(begun, cell('Flow'), '20')
  await begun.page.focus('.vol input')
  await hand.type(begun, /^Floor area served/, '800')
  // (40 + 20) cfm over (1200 + 800) ft2 is 3.0 per 100 ft2.
  const said = await begun.wait(/whole house|all duct systems|Meets the limit, 4/)
  const second = hand.taken()
  await begun.close()
  await mapOnce(session, form, bind)
  const page = await session.open(form)
  const view = await session.openPopup(page)
  return { first, second, said, ...(await filled(session, page, view)) }
}

const deep = ['-20', '-28', '-36', '-44', '-52']
const flows = ['430', '535', '630', '718', '800']

/** (d) Five readings each direction after ISO 9972, to the mean in the report. */
export async function bothDirections(
  session: Session,
  view: Surface,
): Promise<{ first: Count; second: Count; report: Count; said: string }> {
  const hand = new Counted()
  const direction = async (sign: (text: string) => string) => {
    for (const [at, pressure] of deep.entries()) {
      await hand.type(view, cell('House pressure', at + 1), sign(pressure))
      await hand.type(view, cell('Flow', at + 1), flows[at]!)
    }
  }
  await hand.click(view, 'Start a job')
  await atFirstCell(view)
  await hand.click(view, /Enclosure|set-up/i, 'DisclosureTriangle')
  await hand.choose(view, 'Procedure', /ISO 9972/)
  await view.page.focus('[data-row="0"][data-column="pressure"]')
  await direction((text) => text)
  await hand.type(view, /^Volume/, '8726')
  const first = hand.taken()
  await hand.click(view, 'Other direction, same set-up')
  await atFirstCell(view)
  await direction((text) => text.slice(1))
  const second = hand.taken()
  await view.wait(/both directions/)
  await hand.click(view, 'Report')
  const book = await session.waitForPage('/book.html')
  const said = await book.wait(/both directions/)
  return { first, second, report: hand.taken(), said }
}
