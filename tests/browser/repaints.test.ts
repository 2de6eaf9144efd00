/** A page that draws over, restyles or rescales all it can reach changes no pixel of the dock, and hears of no copy. */
import type { Page } from 'puppeteer-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { launch } from './harness.ts'
import { attack, Attacked } from './hostile.ts'
import { until } from './surface.ts'

const attacked = new Attacked()

beforeAll(() => attacked.start(launch))
afterEach(() => attacked.leave())
afterAll(() => attacked.close())

/** The dock's place in the window, from inside its edge and shadow. */
async function shot(page: Page, { x, y, width, height }: Record<'x' | 'y' | 'width' | 'height', number>) {
  return page.screenshot({ encoding: 'base64', clip: { x, y, width, height } })
}

/** What it looks like when it has come to rest: as `wanted`, where that is given, or what it is otherwise. */
async function rested(page: Page, place: Parameters<typeof shot>[1], wanted?: string): Promise<string> {
  const seen: string[] = []
  const settled = async () => {
    seen.push(await shot(page, place))
    const last = new Set(seen.slice(-6))
    return seen.length > 6 && last.size === 1 && (wanted ?? seen.at(-1)) === seen.at(-1) ? seen.at(-1) : undefined
  }
  return (await until(settled, 8000)) ?? 'at no rest, or another'
}

test('repaints all it can: no pixel of the plan is another', async () => {
  const page = await attacked.visit('repaints')
  const ui = await attacked.plan(page)
  const { width, height } = await ui.ask<{ width: number; height: number }>(
    `function () { return { width: innerWidth, height: innerHeight } }`,
  )
  const right = await page.evaluate(() => document.documentElement.clientWidth)
  expect(width).toBeGreaterThan(300)
  const place = { x: right - width, y: 20, width: width - 20, height: height - 20 }
  const before = await rested(page, place)
  for (const way of (await page.evaluate('ways')) as string[]) {
    await attack(page, way)
    // What the page scales or hides is set right a moment after it has done so.
    expect({ way, same: (await rested(page, place, before)) === before }).toEqual({ way, same: true })
    await attack(page, '')
  }
})

test('takes copies for its own: it hears of none, and the text that was copied is the one that was shown', async () => {
  const page = await attacked.visit('copies')
  await page.browserContext().overridePermissions(new URL(page.url()).origin, ['clipboard-read', 'clipboard-write'])
  const ui = await attacked.plan(page)
  await ui.click('button', 'Copy list')
  await ui.click('button', /^Copy .*CFM50/)
  await ui.wait(/Copied/i)
  expect(await page.evaluate('copied')).toBe(0)
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('754')
})
