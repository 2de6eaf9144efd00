/** A page that draws over, restyles or rescales all it can reach changes no pixel of the dock; the same in both browsers. */
import type { Page } from 'puppeteer-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { attack, Attacked, type Host } from './hostile.ts'
import { until, type Surface } from './surface.ts'

type Box = Record<'x' | 'y' | 'width' | 'height', number>

/** A part of the window as it is drawn now, without giving the page another size for it. */
const shot = (page: Page, clip: Box): Promise<string> =>
  page.screenshot({ encoding: 'base64', clip, captureBeyondViewport: false })

/** What it looks like when it has come to rest: as `wanted`, where that is given, or what it is otherwise. */
async function rested(page: Page, place: Box, wanted?: string): Promise<string> {
  const seen: string[] = []
  const settled = async () => {
    seen.push(await shot(page, place))
    const last = new Set(seen.slice(-6))
    return seen.length > 6 && last.size === 1 && (wanted ?? seen.at(-1)) === seen.at(-1) ? seen.at(-1) : undefined
  }
  return (await until(settled, 20_000)) ?? 'at no rest, or another'
}

/** The dock's place in the window, from inside its edge and shadow, once its frame has the size that its content takes. */
async function placeOf(page: Page, ui: Surface): Promise<Box> {
  const right = await page.evaluate(() => document.documentElement.clientWidth)
  const size = await until(() =>
    ui
      .ask<{ width: number; height: number } | null>(
        `function () {
        const foot = this.querySelector('.root > footer').getBoundingClientRect()
        return Math.abs(foot.bottom - innerHeight) <= 2 ? { width: innerWidth, height: innerHeight } : null
      }`,
      )
      .then((found) => found ?? undefined),
  )
  if (!size) throw new Error('The frame never took the size of the plan.')
  expect(size.width).toBeGreaterThan(300)
  return { x: right - size.width, y: 20, width: size.width - 20, height: size.height - 20 }
}

/** Registers the tests for a browser. */
export function repaints(launch: () => Promise<Host>): Attacked {
  const attacked = new Attacked()

  beforeAll(() => attacked.start(launch))
  afterEach(() => attacked.leave())
  afterAll(() => attacked.close())

  test('repaints all it can: no pixel of the plan is another', async () => {
    const page = await attacked.visit('repaints')
    const ui = await attacked.plan(page)
    const place = await placeOf(page, ui)
    const before = await rested(page, place)
    const ways = (await page.evaluate('ways')) as string[]
    expect(ways.length).toBeGreaterThan(12)
    for (const way of ways) {
      await attack(page, way)
      // What the page scales or hides is set right a moment after it has done so.
      expect({ way, same: (await rested(page, place, before)) === before }).toEqual({ way, same: true })
      await attack(page, '')
    }
  })

  test('says of custom properties what they can hold: no outline in the page is another', async () => {
    const page = await attacked.visit('repaints')
    const ui = await attacked.plan(page)
    const { x } = await placeOf(page, ui)
    const beside = { x: 0, y: 0, width: x - 20, height: await page.evaluate(() => innerHeight) }
    const before = await rested(page, beside)
    for (const way of ['properties', 'variables']) {
      await attack(page, way)
      expect({ way, same: (await rested(page, beside, before)) === before }).toEqual({ way, same: true })
      await attack(page, '')
    }
    // The outlines are among what was compared.
    await ui.click('button', /^Close/)
    await ui.gone()
    expect((await rested(page, beside)) === before).toBe(false)
  })

  return attacked
}
