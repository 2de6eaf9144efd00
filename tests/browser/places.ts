/** Driving the helper on the pages of tests/pages/places through the real action. */
import type { Page } from 'puppeteer-core'
import type { Driver, Surface } from './harness.ts'
import { confirm, openDemo, openPlan, type Line } from './round.ts'

/** What the demo job asks to be entered, by the key of the page's own state; several where controls differ in decimals. */
export const wanted: Readonly<Record<string, readonly string[]>> = {
  street: ['14 Tannery Row'],
  town: ['Marrowby'],
  area: ['1860'],
  volume: ['15810'],
  company: ['Bellwether Lane Testing'],
  tester: ['Ines Halvorsen'],
  licence: ['T-0442'],
  'before date': ['2026-01-12'],
  'after date': ['2026-02-11'],
  'before cfm50': ['1445'],
  'after cfm50': ['754'],
  'before ach50': ['5.48', '5.5'],
  'after ach50': ['2.86', '2.9'],
  'after range': ['middle'],
  'duct 1 flow': ['71'],
  date: ['2026-02-11'],
  cfm50: ['754'],
  ach50: ['2.86', '2.9'],
}

/** The states of the page and of all frames in it, as their own scripts were told. */
export async function states(page: Page): Promise<Record<string, unknown>> {
  const all: Record<string, unknown> = {}
  for (const frame of page.frames())
    Object.assign(
      all,
      await frame.evaluate(() => (window as unknown as { state?: object }).state ?? {}).catch(() => ({})),
    )
  return all
}

/** Opens the helper to map a page and binds what is clear. Gives the helper, still open. */
export async function mapClear(session: Driver, page: Page): Promise<Surface> {
  const popup = await openDemo(session, page)
  await popup.click('button', 'Map this page')
  const ui = await session.helper(page)
  await bindClear(ui)
  return ui
}

export async function bindClear(ui: Surface): Promise<void> {
  await ui.wait(/Pick a control/)
  await ui.click('button', 'Propose for all')
  await ui.click('button', /^Bind th(is|ese)/)
  await ui.wait(/Pick a control/)
  await ui.wait(/kept/)
}

export interface Filled {
  lines: Line[]
  state: Record<string, unknown>
  ui: Surface
}

/** Maps what is clear, looks at the plan, fills, and gives the receipt beside the page's own state. */
export async function mapAndFill(session: Driver, page: Page): Promise<Filled> {
  const mapping = await mapClear(session, page)
  await mapping.click('button', 'Close')
  await mapping.gone()
  const ui = await openPlan(session, page)
  const lines = await confirm(ui)
  return { lines, state: await states(page), ui }
}
