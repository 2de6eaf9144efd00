/** Filling the pages of tests/pages/hostile through the real action, and holding the receipt against what they hold. */
import type { Page } from 'puppeteer-core'
import { expect } from 'vitest'
import { startHostile, type Hostile } from '../pages/hostile/server.ts'
import type { Driver, Surface } from './harness.ts'
import { confirm, openPlan, type Line } from './round.ts'
import { mapClear } from './places.ts'

/** What the demo job asks of the form, by the page's own names of the controls. */
export const asked: Readonly<Record<string, { control: string; text: string }>> = {
  street: { control: 'Street address', text: '14 Tannery Row' },
  town: { control: 'City', text: 'Marrowby' },
  volume: { control: 'Conditioned volume (cu ft)', text: '15810' },
  date: { control: 'Date of test', text: '2026-02-11' },
  cfm50: { control: 'CFM50', text: '754' },
  tester: { control: 'Tester, printed name', text: 'Ines Halvorsen' },
  licence: { control: 'Licence number', text: 'T-0442' },
}

/** Texts of the demo job that no control of the form asks for: no page may ever come to see them. */
const untold = /Bellwether|Larch|Home Comfort|1860|1445/

const possible = ['entered', 'already there', 'differs', 'not found', 'refused', 'ambiguous']

export interface Held {
  named: Record<string, string>
  others: string[]
}

/** Either browser, with the extension in it. */
export interface Host extends Driver {
  /** What pages may address messages to. */
  readonly id: string
  /** Where the extension's own pages stand, without a slash at the end. */
  readonly origin: string
  openPage: (path: string) => Promise<Surface>
  close: () => Promise<void>
}

export class Attacked {
  session!: Host
  pages!: Hostile
  readonly #open: Page[] = []

  /** Starts the browser and maps the plain form once; its map serves every page. */
  async start(launch: () => Promise<Host>): Promise<void> {
    ;[this.session, this.pages] = await Promise.all([launch(), startHostile()])
    const page = await this.session.open(this.pages.at('plain'))
    const mapping = await mapClear(this.session, page)
    await mapping.wait(/7 of 7 controls bound/)
    await page.close()
  }

  async close(): Promise<void> {
    await this.session?.close()
    await this.pages?.close()
  }

  async visit(name: string, more = ''): Promise<Page> {
    const page = await this.session.open(this.pages.at(name, more))
    this.#open.push(page)
    return page
  }

  /** Closes every page that was visited. */
  async leave(): Promise<void> {
    for (const page of this.#open.splice(0)) await page.close()
  }

  plan(page: Page): Promise<Surface> {
    return openPlan(this.session, page)
  }

  /** The plan, confirmed; the receipt held against the page. */
  async fill(
    page: Page,
    act?: () => Promise<unknown>,
    names = asked,
  ): Promise<{ lines: Line[]; ui: Surface; held: Held }> {
    const ui = await this.plan(page)
    await act?.()
    const lines = await confirm(ui)
    return { lines, ui, held: await truthful(page, lines, names) }
  }
}

/** What the page itself holds. */
export async function heldBy(page: Page): Promise<Held> {
  return JSON.parse(await page.evaluate('watch.held()').then(String)) as Held
}

/** Whether the page's own clock still runs. */
export async function lives(page: Page): Promise<void> {
  const before = Number(await page.evaluate('watch.ticks'))
  await new Promise((done) => setTimeout(done, 300))
  expect(Number(await page.evaluate('watch.ticks'))).toBeGreaterThan(before)
}

/** Every line has an outcome, what is called entered is held by the page, and nothing else was written or told. */
export async function truthful(page: Page, lines: readonly Line[], names = asked): Promise<Held> {
  const held = await heldBy(page)
  for (const line of lines) {
    expect(possible).toContain(line.outcome)
    const [name = ''] = Object.entries(names).find(([, { control }]) => control === line.control) ?? []
    expect([line.control, line.intended]).toEqual([line.control, names[name]?.text])
    if (line.outcome === 'entered' || line.outcome === 'already there')
      expect([line.control, line.readBack, held.named[name]]).toEqual([line.control, line.intended, line.intended])
  }
  for (const [name, text] of Object.entries(held.named)) {
    const line = lines.find(({ control }) => control === names[name]?.control)
    if (text !== '' && line && line.outcome !== 'differs') expect([name, text]).toEqual([name, line.intended])
  }
  // Controls that are not in the plan.
  expect(held.others).toEqual([])
  const told = await page.evaluate('watch.told()').then(String)
  expect(told).not.toMatch(untold)
  expect(await page.evaluate('watch.submitted')).toBe(0)
  await lives(page)
  return held
}

/** The outcome of each control of a receipt, by the page's own name of it, with the sentence behind it. */
export function outcomesOf(lines: readonly Line[]): Record<string, string> {
  return Object.fromEntries(
    Object.entries(asked).map(([name, { control }]) => [
      name,
      lines.find((line) => line.control === control)?.outcome ?? 'no line',
    ]),
  )
}

/** Calls the page's own attack. */
export const attack = (page: Page, ...args: unknown[]): Promise<unknown> =>
  page.evaluate(`attack(${args.map((arg) => JSON.stringify(arg)).join()})`)
