/** A frame of another site in Firefox: asked for, allowed by permissions.request, mapped and filled like the page. */
import { afterAll, beforeAll, expect, it } from 'vitest'
import { startPlaces, type Places } from '../pages/places/server.ts'
import { allowFrame } from './allow-frame.ts'
import { launchFirefox, type FirefoxSession } from './firefox.ts'
import { bindClear, states, wanted } from './places.ts'
import { confirm, openDemo, openPlan } from './round.ts'

let places: Places
let session: FirefoxSession

beforeAll(async () => {
  ;[session, places] = await Promise.all([launchFirefox(), startPlaces()])
})
afterAll(async () => {
  await session?.close()
  await places?.close()
})

it('is closed until the person allows its site, and then filled', async () => {
  const page = await session.open(`${places.origin}/embedding.html`)
  await (await openDemo(session, page)).click('button', 'Map this page')
  const closed = await session.helper(page)
  await closed.wait(new RegExp(`a frame of ${places.other}, which Gapsum cannot see`))
  await allowFrame(session, page, closed, places.other)
  const mapping = await session.helper(page)
  await mapping.wait(/0 of 7 controls bound/)
  await bindClear(mapping)
  await mapping.click('button', 'Close')
  await mapping.gone()
  const lines = await confirm(await openPlan(session, page))
  expect(lines.length).toBeGreaterThanOrEqual(6)
  for (const { intended, readBack, outcome } of lines) expect([outcome, readBack]).toEqual(['entered', intended])
  const state = await states(page)
  for (const key of ['street', 'volume', 'after date', 'after cfm50', 'after range'])
    expect(wanted[key]).toContain(state[key])
})
