/** Outlines in a frame of another origin that the person has allowed, and picking its controls by pointer. */
import type { CDPSession, Frame, Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { startPlaces, type Places } from '../pages/places/server.ts'
import { launchAllowed } from './allowed.ts'
import { drawnAs, type Drawn, looks } from './drawn.ts'
import { helper, type Surface } from './harness.ts'
import { bindClear } from './places.ts'
import { openDemo, openPlan } from './round.ts'

let allowed: Awaited<ReturnType<typeof launchAllowed>>
let places: Places

beforeAll(async () => {
  ;[allowed, places] = await Promise.all([launchAllowed(), startPlaces()])
})
afterAll(async () => {
  await allowed?.close()
  await places?.close()
})

/** The outlines in the closed root of the frame, where the page itself cannot look. */
async function drawnIn(frame: Frame): Promise<Drawn[]> {
  const session = (frame as unknown as { client: CDPSession }).client
  const { root } = await session.send('DOM.getDocument', { depth: 0 })
  const { nodeId } = await session.send('DOM.querySelector', { nodeId: root.nodeId, selector: 'gapsum-helper' })
  if (nodeId === 0) return []
  const { node } = await session.send('DOM.describeNode', { nodeId, depth: 1, pierce: true })
  const backendNodeId = node.shadowRoots?.find(({ shadowRootType }) => shadowRootType === 'closed')?.backendNodeId
  if (backendNodeId === undefined) return []
  const { object } = await session.send('DOM.resolveNode', { backendNodeId })
  const { result } = await session.send('Runtime.callFunctionOn', {
    objectId: object.objectId ?? '',
    returnByValue: true,
    functionDeclaration: `function () {
      return [...this.querySelectorAll('.mk')].filter((mark) => !mark.hidden).map((mark) => {
        const { left, top, right, bottom } = mark.getBoundingClientRect()
        return { look: mark.classList[1], tag: mark.textContent, box: [left, top, right, bottom] }
      })
    }`,
  })
  return result.value as Drawn[]
}

const placeOf = (frame: Frame) =>
  frame.evaluate(() => {
    const { left, top, right, bottom } = document.querySelector('#volume')!.getBoundingClientRect()
    return { box: [left, top, right, bottom], height: document.documentElement.scrollHeight }
  })

async function openMapping(): Promise<{ page: Page; frame: Frame; mapping: Surface }> {
  const page = await allowed.session.open(`${places.origin}/embedding.html`)
  await (await openDemo(allowed.session, page)).click('button', 'Map this page')
  const mapping = await helper(page)
  await mapping.wait(/of 7 controls bound/)
  const frame = page.frames().find((each) => each.url().startsWith(`${places.other}/frame-outer`))
  if (!frame) throw new Error('The page has no frame of another origin.')
  return { page, frame, mapping }
}

test('its controls are outlined where they stand, chosen by a click of the person only, and left as they were', async () => {
  const { page, frame, mapping } = await openMapping()
  // Street and volume in the frame itself; date, figure, range and result in the frame inside it.
  const free = await drawnAs(
    () => drawnIn(frame),
    (drawn) => drawn.length === 6,
  )
  expect(looks(free ?? [])).toEqual(Array(6).fill('free'))
  const { box, height } = await placeOf(frame)
  expect(free?.some((mark) => mark.box.every((edge, at) => Math.abs(edge - box[at]!) < 2))).toBe(true)

  // What the frame's own script sends chooses nothing.
  await frame.evaluate(() => document.querySelector<HTMLElement>('#volume')!.click())
  await new Promise((resolve) => setTimeout(resolve, 400))
  expect(await mapping.text()).toMatch(/Pick a control/)

  const volume = (await frame.$('#volume'))!
  await volume.hover()
  expect(
    await drawnAs(
      () => drawnIn(frame),
      (drawn) => looks(drawn).includes('lit'),
    ),
  ).toBeDefined()
  await volume.click()
  await mapping.wait(/Conditioned volume \(cu ft\)[\s\S]*Known by/)
  expect(await frame.evaluate(() => document.activeElement?.localName)).toBe('body')
  const asked = await drawnAs(
    () => drawnIn(frame),
    (drawn) => looks(drawn).includes('now'),
  )
  expect(asked?.find(({ look }) => look === 'now')?.tag).toMatch(/this one$/)

  // A radio of the frame inside it: chosen, not ticked.
  await mapping.click('button', 'All controls')
  const inner = page.frames().find((each) => each.url().startsWith(`${places.other}/frame-inner`))!
  await (await inner.$('input[value=Fail]'))!.click()
  await mapping.wait(/Result[\s\S]*Known by/)
  expect(await inner.evaluate(() => document.querySelectorAll('input:checked').length)).toBe(0)

  await mapping.click('button', 'All controls')
  await mapping.click('button', 'Close')
  await mapping.gone()
  expect(
    await drawnAs(
      () => drawnIn(frame),
      (drawn) => drawn.length === 0,
    ),
  ).toEqual([])
  expect(await frame.evaluate(() => document.querySelectorAll('gapsum-helper').length)).toBe(0)
  expect(await placeOf(frame)).toEqual({ box, height })
  // The frame works as always again.
  await volume.click()
  expect(await frame.evaluate(() => document.activeElement?.id)).toBe('volume')
  await page.close()
})

test('the plan numbers what it will type there, and a click there chooses nothing then', async () => {
  const { page, frame, mapping } = await openMapping()
  await bindClear(mapping)
  expect(
    await drawnAs(
      () => drawnIn(frame),
      (drawn) => looks(drawn).includes('bound'),
    ),
  ).toBeDefined()
  await mapping.click('button', 'Close')
  await mapping.gone()
  const ui = await openPlan(allowed.session, page)
  const drawn = await drawnAs(
    () => drawnIn(frame),
    (marks) => marks.some(({ tag }) => /^\d$/.test(tag)),
  )
  expect(drawn?.length).toBeGreaterThanOrEqual(5)
  await (await frame.$('#volume'))!.click()
  expect(await frame.evaluate(() => document.activeElement?.id)).toBe('volume')
  await ui.click('button', 'Close')
  await ui.gone()
  expect(
    await drawnAs(
      () => drawnIn(frame),
      (marks) => marks.length === 0,
    ),
  ).toEqual([])
  await page.close()
})
