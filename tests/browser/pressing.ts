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
  if (!button || button.disabled || !/^Fill/.test(button.textContent)) return null
  const { left, top, width, height } = button.getBoundingClientRect()
  return { x: left + width / 2, y: top + height / 2, width: innerWidth }
}`

export interface Pressed {
  presses: number
  /** Presses that were answered with why they do not count. */
  refused: number
  /** Presses that counted: the helper had come to the top by then. */
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
    /** Presses Fill under a cover, or under nothing, and looks at what came of it. */
    const press = async (at: number, name: string): Promise<'counted' | 'refused' | undefined> => {
      const button = await until(
        async () => (await ui.ask<{ x: number; y: number; width: number } | null>(buttonAt)) ?? undefined,
      )
      if (!button) throw new Error(`Plan ${at} has no button: ${await ui.text()}`)
      if (name === 'nothing') await ui.ask(drawn)
      else await attack(page, name)
      await pause(random() * 400)
      const right = await page.evaluate(() => document.documentElement.clientWidth)
      await page.mouse.click(right - 12 - button.width + button.x, 12 + button.y)
      return until(async () => {
        if (Object.values((await heldBy(page)).named).some(Boolean)) return 'counted'
        const words = await ui.text()
        // The press counted, and what lay over the control then kept the text out of it: its receipt says so.
        if (/Nothing was submitted/.test(words)) return 'counted'
        return /lay over this window|Nothing was typed/.test(words) ? 'refused' : undefined
      }, 2500)
    }
    await fresh(0)
    for (let at = 1; at <= count; at++) {
      // The last one is pressed under nothing: it must count, or the presses meet no button.
      const name = at < count ? coverNames[Math.floor(random() * coverNames.length)]! : 'nothing'
      const outcome = await press(at, name)
      result.presses += 1
      if (outcome === 'counted') {
        result.counted += 1
        if (!(await page.evaluate('helperOnTop()'))) result.wrong.push(`press ${at} under ${name} counted`)
      }
      if (outcome === 'refused') result.refused += 1
      await page.evaluate('uncover()')
      if (outcome === 'counted') await ui.wait(/Nothing was submitted/, 30_000)
      // What the press was answered with goes with the next plan.
      await fresh(at)
      if (name === 'nothing' && outcome !== 'counted') result.wrong.push('the last press did not count')
      log?.(at)
    }
  } finally {
    await many.close()
  }
  return result
}
