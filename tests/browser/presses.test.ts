/** A sample of `npm run soak presses`: each press has its effect, and leaves the focus somewhere. */
import { afterEach, beforeEach, expect, test } from 'vitest'
import { launch, type Session } from './harness.ts'
import { pressAll } from './presses.ts'

let session: Session
beforeEach(async () => {
  session = await launch()
})
afterEach(() => session.close())

test.each([
  ['/popup.html', 0],
  ['/book.html#devices', 3],
])('has an effect for each press in %s, with %i busy loops', async (path, busy) => {
  const view = await session.openPage('/popup.html')
  await view.click('button', 'Open the demo job')
  await view.wait(/Figures/)
  const shown = path === '/popup.html' ? view : await session.openPage(path)
  expect(await pressAll(shown, { presses: 12, seed: 20_261_201, busy })).toEqual({ presses: 12, dead: [], lost: [] })
})
