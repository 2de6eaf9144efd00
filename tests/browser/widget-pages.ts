/** Real browsers on the pages that hold the widget, and what the tests do with it. */
import { launch, type Browser, type Frame, type Page } from 'puppeteer-core'
import type { GapsumWidget } from '../../lib/widget/element.ts'
import { findBrowser, type Kind } from './find-browser.ts'
import { startBrowser } from './isolated.ts'
import { until } from './surface.ts'

export const kinds: Kind[] = ['chromium', 'firefox']

export const open = (kind: Kind): Promise<Browser> =>
  kind === 'chromium'
    ? startBrowser()
    : launch({ browser: 'firefox', executablePath: findBrowser('firefox'), headless: true })

/** A tab at an address, once the element there is known; with what went wrong in it. */
export async function visit(browser: Browser, url: string): Promise<{ page: Page; faults: string[] }> {
  const page = await browser.newPage()
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(String(error)))
  page.on('console', (message) => {
    if (message.type() === 'error' || /Content.Security.Policy/i.test(message.text())) faults.push(message.text())
  })
  await page.goto(url)
  await page.bringToFront()
  return { page, faults }
}

/** Runs in the page with the element of an id. */
export async function withWidget<T, A>(
  page: Page | Frame,
  act: (widget: GapsumWidget, given: A) => T | Promise<T>,
  given?: A,
  id = 'w',
): Promise<T> {
  await page.waitForSelector(`#${id}:defined`)
  const handle = await page.$(`#${id}`)
  if (!handle) throw new Error(`No element ${id} on the page.`)
  return (await handle.evaluate(act as never, given as never)) as T
}

/** Types into a cell of the widget as a person does. */
export async function typeCell(page: Page | Frame, label: string, text: string, id = 'w'): Promise<void> {
  const cell = await page.waitForSelector(`#${id} >>> [aria-label^="${label}"]`)
  await cell?.click()
  await cell?.type(text)
}

/** 433 cfm at 50 Pa in 8,726 ft3 is 2.98 air changes per hour: 433 x 60 / 8726, a published worked example. */
export const example = { volume: '8726', points: [{ pressure: '-50', flow: '433', devicePressure: '', range: '' }] }

/** Until something holds in the page: asked for from outside, as a strict policy keeps the driver from waiting in there. */
export async function untilHolds(page: Page, holds: () => unknown): Promise<void> {
  // A page on its way to another cannot be asked.
  const ask = async () => (await page.evaluate(holds).catch(() => false)) || undefined
  if ((await until(ask)) === undefined) throw new Error(`It never came to hold that ${String(holds)}.`)
}
