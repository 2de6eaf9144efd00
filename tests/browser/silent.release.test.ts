/** A press on Fill is answered, also while the book is not. */
import { afterAll, beforeAll, expect, it } from 'vitest'
import { launch } from './harness.ts'
import { hold } from './hold-book.ts'
import { Attacked, asked, heldBy, outcomesOf } from './hostile.ts'
import { confirm } from './round.ts'

const attacked = new Attacked()

beforeAll(() => attacked.start(launch))
afterAll(() => attacked.close())

it('while the book is silent: says so after a while, and fills when it answers again, once for two presses', async () => {
  const page = await attacked.visit('plain')
  const ui = await attacked.plan(page)
  const { page: book } = await attacked.session.openPage('/book.html')
  await hold(book)
  await page.bringToFront()

  await ui.click('button', /^Fill 7 controls$/)
  await ui.wait(/the book could not note the fill. It has not answered for 15 seconds/, 20_000)
  expect((await heldBy(page)).named['street']).toBe('')

  const button = await ui.get('button', /^Fill 7 controls$/)
  await Promise.all([ui.clickFound(button), ui.clickFound(button)])
  await book.evaluate('letGo()')
  await ui.wait(/All 7 controls entered/, 30_000)

  // What was noted late and never begun has no lines; what was filled stands there whole, once.
  const entries = (await book.evaluate(`new Promise((resolve) => {
    indexedDB.open('gapsum').onsuccess = ({ target }) => {
      target.result.transaction('entries').objectStore('entries').getAll().onsuccess = ({ target }) =>
        resolve(target.result.map(({ complete, lines }) => [complete, lines.length]))
    }
  })`)) as [boolean, number][]
  expect(entries.filter(([, lines]) => lines > 0)).toEqual([[true, 7]])
})

it('and a second plan after that is filled as any other', async () => {
  const ui = await attacked.plan(await attacked.visit('plain'))
  const entered = Object.fromEntries(Object.keys(asked).map((name) => [name, 'entered']))
  expect(outcomesOf(await confirm(ui))).toEqual(entered)
})
