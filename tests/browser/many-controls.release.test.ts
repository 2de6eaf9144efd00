/** A page of 20,000 controls: the plan comes bit by bit, and is filled only when all of them were looked through. */
import { afterAll, beforeAll, expect, it } from 'vitest'
import { launch } from './harness.ts'
import { Attacked, outcomesOf, truthful } from './hostile.ts'
import { confirm, drawn } from './round.ts'

const attacked = new Attacked()
beforeAll(() => attacked.start(launch))
afterAll(() => attacked.close())

it('shows the first lines while it looks on, keeps the press until the plan is whole, and fills then', async () => {
  const page = await attacked.visit('rows')
  const popup = await attacked.session.openPopup(page)
  await popup.wait(/7 bindings/)
  await popup.click('button', 'Fill this page')
  const ui = await attacked.session.helper(page)
  const early = await ui.wait(/Plan: [1-9][^]*[\d,]+ are looked through so far/, 60_000)
  // The page has them in the order of the form, far apart: the last is not found yet.
  expect(early).toContain('14 Tannery Row')
  expect(early).not.toContain('T-0442')
  const shut = `function () { return [...this.querySelectorAll('button')].some((one) => /^Fill \\d/.test(one.textContent) && one.disabled) }`
  expect(await ui.ask(shut)).toBe(true)
  const whole = await ui.wait(/^(?![^]*looked through so far)[^]*T-0442/, 60_000)
  expect(whole).toContain('Plan: 7 controls')
  expect(whole).not.toContain('The page has changed')
  await ui.ask(drawn)
  const lines = await confirm(ui)
  await truthful(page, lines)
  expect(new Set(Object.values(outcomesOf(lines)))).toEqual(new Set(['entered']))
})
