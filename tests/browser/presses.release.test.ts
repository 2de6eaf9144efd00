/**
 * Further views in a sample of `npm run soak presses`, and presses that once had no effect: each press has its effect, and
 * leaves the focus somewhere.
 */
import { afterEach, beforeEach, expect, it as test } from 'vitest'
import { launch, type Session } from './harness.ts'
import { pressAll } from './presses.ts'

let session: Session
beforeEach(async () => {
  session = await launch()
})
afterEach(() => session.close())

test.each([
  ['/sidepanel.html', 3],
  ['/book.html#limits', 0],
])('has an effect for each press in %s, with %i busy loops', async (path, busy) => {
  const popup = await session.openPage('/popup.html')
  await popup.click('button', 'Open the demo job')
  await popup.wait(/Figures/)
  const view = await session.openPage(path)
  expect(await pressAll(view, { presses: 25, seed: 20_261_130, busy })).toEqual({ presses: 25, dead: [], lost: [] })
})

test('leads to the form of a limit, also where it stands open already', async () => {
  const book = await session.openPage('/book.html#limits')
  await book.click('button', 'Add a limit')
  await book.type('textbox', 'Name', 'Permit 12')
  await book.type('textbox', 'Limit', '2.5')
  await book.click('button', /^Keep/)
  for (let press = 0; press < 2; press++) {
    await book.click('button', /^Change/)
    await book.page.waitForFunction(() => document.activeElement?.closest('form.sheet'))
    expect(await book.value('textbox', 'Limit')).toBe('2.5')
  }
})

test('moves the focus to what is nearest when a range of a device is deleted', async () => {
  const book = await session.openPage('/book.html#devices')
  await book.click('button', 'Add a device')
  await book.click('button', 'Add a range')
  await book.click('button', 'Delete range 2')
  expect((await book.focused())?.kind).toMatch(/input|button/)
})
