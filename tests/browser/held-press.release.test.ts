/** A plan that changes while the button of the mouse is held down on Fill: the press was meant for the plan before. */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { launch } from './harness.ts'
import { Attacked, heldBy } from './hostile.ts'

const attacked = new Attacked()

beforeAll(() => attacked.start(launch))
afterAll(() => attacked.close())

test('a press that began on the plan before is answered and counts for none', async () => {
  const page = await attacked.visit('plain')
  // The foot of the dock stays where it is when its content grows.
  await page.setViewport({ width: 1280, height: 480 })
  const ui = await attacked.plan(page)
  const up = page.mouse.up.bind(page.mouse)
  page.mouse.up = async (options) => {
    await page.evaluate(`document.getElementById('tester').disabled = true`)
    await ui.wait(/The page has changed since this plan was shown/)
    await up(options)
  }
  await ui.click('button', /^Fill 7 controls$/)
  page.mouse.up = up
  await ui.wait(/This plan came while you pressed, so the press did not count/)
  expect(Object.values((await heldBy(page)).named).join('')).toBe('')
  await ui.click('button', /^Fill \d controls$/)
  await ui.wait(/6 of 7 controls entered|6 controls entered/)
})
