/** Pages that lie over the helper, so that a press meant for them would fill; the same list for both browsers. */
import { expect } from 'vitest'
import { asked, attack, heldBy, type Attacked } from './hostile.ts'

type Case = (attacked: Attacked) => Promise<void>

const nothing = Object.fromEntries(Object.keys(asked).map((name) => [name, '']))

/** Ways to lie over the helper: tests/pages/hostile/covers.html has each. */
export const coverNames = [
  'a popover',
  'a popover in a root',
  'a popover in a closed root',
  'thirty popovers',
  'thirty popovers in a root',
  'a popover each moment',
  'a translucent sheet',
  'a sheet over the table alone',
  'a sheet that turns colours',
  'a dialog in a root',
]

/** Lays a sheet of the page over the helper, presses Fill, and looks at what came of it. */
async function liesOver(attacked: Attacked, how: string): Promise<void> {
  const page = await attacked.visit('covers')
  const ui = await attacked.plan(page)
  await attack(page, how)
  // What is seen is told a moment after it is drawn.
  await new Promise((done) => setTimeout(done, 600))
  await ui.click('button', /^Fill \d+ controls?$/).catch(() => {})
  await new Promise((done) => setTimeout(done, 400))
  // Either the press did not count, or the helper had come to the top by then, and its plan was seen.
  if (/controls? entered|written and read back/.test(await ui.text()))
    expect(await page.evaluate('helperOnTop()')).toBe(true)
  else expect((await heldBy(page)).named).toEqual(nothing)
}

export const coverCases: Readonly<Record<string, Readonly<Record<string, Case>>>> = {
  'a page that lies over the helper': Object.fromEntries(
    coverNames.map((how): [string, Case] => [
      `by ${how}, and lets presses through: none counts`,
      (attacked) => liesOver(attacked, how),
    ]),
  ),
}
