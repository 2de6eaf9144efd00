/** A sample of `npm run soak presses`: each press has its effect, and leaves the focus somewhere. */
import { afterEach, beforeEach, expect, it as test } from 'vitest'
import { launch, type Session } from './harness.ts'
import { pressAll } from './presses.ts'

let session: Session
beforeEach(async () => {
  session = await launch()
})
afterEach(() => session.close())

test.each([
  ['/popup.html', 0],
  ['/sidepanel.html', 3],
  ['/book.html#devices', 3],
  ['/book.html#limits', 0],
])('has an effect for each press in %s, with %i busy loops', async (path, busy) => {
  const popup = await session.openPage('/popup.html')
  await popup.click('button', 'Open the demo job')
  await popup.wait(/Figures/)
  const view = path === '/popup.html' ? popup : await session.openPage(path)
  expect(await pressAll(view, { presses: 25, seed: 20_261_130, busy })).toEqual({ presses: 25, dead: [], lost: [] })
})

test('moves the focus to what is nearest when a range of a device is deleted', async () => {
  const book = await session.openPage('/book.html#devices')
  await book.click('button', 'Add a device')
  await book.click('button', 'Add a range')
  await book.click('button', 'Delete range 2')
  expect((await book.focused())?.kind).toMatch(/input|button/)
})
