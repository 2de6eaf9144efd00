/**
 * Outlines in a frame of another origin in Firefox, and picking its controls by pointer. A script beside the page reads
 * what stands in the frame's closed root; for that the frame runs in the process of its page.
 */
import type { Frame, Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { startPlaces, type Places } from '../pages/places/server.ts'
import { drawnAs, type Drawn, looks } from './drawn.ts'
import { allowFrame } from './allow-frame.ts'
import { launchFirefox, type FirefoxSession } from './firefox.ts'
import { bindClear } from './places.ts'
import { openDemo, openPlan } from './round.ts'
import type { Surface } from './surface.ts'

let session: FirefoxSession
let places: Places
let page: Page
let frame: Frame
let mapping: Surface

beforeAll(async () => {
  ;[session, places] = await Promise.all([launchFirefox({ oneProcess: true }), startPlaces()])
  page = await session.open(`${places.origin}/embedding.html`)
  await (await openDemo(session, page)).click('button', 'Map this page')
  mapping = await session.helper(page)
  await allowFrame(session, page, mapping, places.other)
  await mapping.wait(/of 7 controls bound/)
  frame = page.frames().find((each) => each.url().startsWith(`${places.other}/frame-outer`))!
})
afterAll(async () => {
  await session?.close()
  await places?.close()
})

/** The outlines in the closed root of the outer frame, where the page itself cannot look. */
const drawnIn = (): Promise<Drawn[]> =>
  session.beside(
    { tab: page.url() },
    `() => {
      const root = content.frames[0].document.querySelector('gapsum-helper')?.openOrClosedShadowRoot
      return [...(root?.querySelectorAll('.mk') ?? [])].filter((mark) => !mark.hidden).map((mark) => {
        const { left, top, right, bottom } = mark.getBoundingClientRect()
        return { look: mark.classList[1], tag: mark.textContent, box: [left, top, right, bottom] }
      })
    }`,
  )

const boxOfVolume = () =>
  frame.evaluate(() => {
    const { left, top, right, bottom } = document.querySelector('#volume')!.getBoundingClientRect()
    return [left, top, right, bottom]
  })

test('its controls are outlined where they stand, chosen by a click of the person only, and left as they were', async () => {
  // The pointer may still rest where the toolbar's button was pressed: over the frame.
  await page.mouse.move(2, 2)
  const free = await drawnAs(drawnIn, (drawn) => drawn.length === 6 && drawn.every(({ look }) => look === 'free'))
  expect(free).toBeDefined()
  const box = await boxOfVolume()
  expect(free?.some((mark) => mark.box.every((edge, at) => Math.abs(edge - box[at]!) < 2))).toBe(true)

  // What the frame's own script sends chooses nothing.
  await frame.evaluate(() => document.querySelector<HTMLElement>('#volume')!.click())
  await new Promise((resolve) => setTimeout(resolve, 400))
  expect(await mapping.text()).toMatch(/Pick a control/)

  const volume = (await frame.$('#volume'))!
  await volume.hover()
  expect(await drawnAs(drawnIn, (drawn) => looks(drawn).includes('lit'))).toBeDefined()
  await volume.click()
  await mapping.wait(/Conditioned volume \(cu ft\)[\s\S]*Known by/)
  const asked = await drawnAs(drawnIn, (drawn) => looks(drawn).includes('now'))
  expect(asked?.find(({ look }) => look === 'now')?.tag).toMatch(/this one$/)

  await mapping.click('button', 'All controls')
  await bindClear(mapping)
  expect(await drawnAs(drawnIn, (drawn) => looks(drawn).includes('bound'))).toBeDefined()
  await mapping.click('button', 'Close')
  await mapping.gone()
  expect(await drawnAs(drawnIn, (drawn) => drawn.length === 0)).toEqual([])
  expect(await frame.evaluate(() => document.querySelectorAll('gapsum-helper').length)).toBe(0)
  expect(await boxOfVolume()).toEqual(box)
})

test('the plan numbers what it will type there, and a click there chooses nothing then', async () => {
  const ui = await openPlan(session, page)
  const drawn = await drawnAs(drawnIn, (marks) => marks.some(({ tag }) => /^\d$/.test(tag)))
  expect(drawn?.length).toBeGreaterThanOrEqual(5)
  await (await frame.$('#volume'))!.click()
  expect(await frame.evaluate(() => document.activeElement?.id)).toBe('volume')
  await ui.click('button', 'Close')
  await ui.gone()
  expect(await drawnAs(drawnIn, (marks) => marks.length === 0)).toEqual([])
})
