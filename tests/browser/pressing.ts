/** A page that lies over the plan in every way it has, while somebody presses Fill. */
import { generator } from '../random.ts'
import { coverNames } from './hostile-cover-cases.ts'
import { attack, heldBy } from './hostile.ts'
import { ManyPlans } from './many-plans.ts'
import { drawn } from './round.ts'
import { until } from './surface.ts'

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms))

/** Where the button for the fill is in the dock's frame, and how large the frame is. */
const buttonAt = `function () {
  const button = this.querySelector('.root > footer .b.first')
  if (!button || button.disabled) return null
  const { left, top, width, height } = button.getBoundingClientRect()
  return { x: left + width / 2, y: top + height / 2, width: innerWidth }
}`

export interface Pressed {
  presses: number
  /** Presses that were answered with why they do not count. */
  refused: number
  /** Presses that filled: the helper had come to the top by then. */
  counted: number
  wrong: string[]
}

/**
 * Covers the dock again and again, in another way each time, and presses a random moment after. A press may fill only
 * where the helper lies on top of all the page has: else a person confirmed what they could not see.
 */
export async function pressUnder(seed: number, count: number, log?: (done: number) => void): Promise<Pressed> {
  const random = generator(seed)
  const many = new ManyPlans()
  const result: Pressed = { presses: 0, refused: 0, counted: 0, wrong: [] }
  try {
    await many.start('covers')
    const { page, ui } = many
    const fresh = async (at: number) => {
      await page.evaluate('empty()')
      await many.show(['14 Tannery Row'], `plan ${at}.`)
    }
    await fresh(0)
    for (let at = 1; at <= count; at++) {
      // The last one is pressed under nothing: it must fill, or the presses meet no button.
      const name = at < count ? coverNames[Math.floor(random() * coverNames.length)]! : 'nothing'
      const button = await until(
        async () => (await ui.ask<{ x: number; y: number; width: number } | null>(buttonAt)) ?? undefined,
      )
      if (!button) throw new Error(`Plan ${at} has no button: ${await ui.text()}`)
      if (name !== 'nothing') await attack(page, name)
      else await ui.ask(drawn)
      await pause(random() * 400)
      const right = await page.evaluate(() => document.documentElement.clientWidth)
      await page.mouse.click(right - 12 - button.width + button.x, 12 + button.y)
      result.presses += 1
      const outcome = await until(async () => {
        if (Object.values((await heldBy(page)).named).some(Boolean)) return 'filled'
        return /lay over this window|Nothing was typed/.test(await ui.text()) ? 'refused' : undefined
      }, 2500)
      if (outcome === 'filled') {
        result.counted += 1
        if (!(await page.evaluate('helperOnTop()'))) result.wrong.push(`press ${at} under ${name} filled`)
        await page.evaluate('uncover()')
        await ui.wait(/Nothing was submitted/, 30_000)
        await fresh(at)
      } else {
        await page.evaluate('uncover()')
        // Its sentence goes with the next plan.
        if (outcome === 'refused') {
          result.refused += 1
          await fresh(at)
        }
      }
      if (name === 'nothing' && outcome !== 'filled') result.wrong.push('the last press filled nothing')
      log?.(at)
    }
  } finally {
    await many.close()
  }
  return result
}
