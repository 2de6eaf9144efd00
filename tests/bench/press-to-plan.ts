/** How long it takes from the press on "Fill this page" in the popup to the plan that stands on the page. */
import type { Page } from 'puppeteer-core'
import type { Attacked } from '../browser/hostile.ts'

/** The middle one of some times. */
export const median = (list: readonly number[]): number =>
  list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)] ?? NaN

export interface PlanTimes {
  /** Until the first lines of the plan stand there, in ms. */
  first: number
  /** Until all of it is known and can be filled, in ms. */
  whole: number
}

/**
 * Times on a page that is mapped; the page is left afterwards.
 * @param patience after so many ms no plan is waited for
 * @throws Error when none came
 */
export async function pressToPlan(attacked: Attacked, page: Page, patience: number): Promise<PlanTimes> {
  const popup = await attacked.session.openPopup(page)
  await popup.wait(/\d+ (bindings?|of \d+ left)/)
  let pressed = 0
  await popup.page.exposeFunction('pressed', (at: number) => (pressed = at))
  await popup.page.evaluate(`addEventListener('click', () => pressed(Date.now()), true)`)
  await popup.click('button', 'Fill this page')
  const shows = await attacked.session.helper(page)
  const end = Date.now() + patience
  const when = async (stands: (text: string) => boolean): Promise<number> => {
    while (!stands(await shows.text().catch(() => ''))) if (Date.now() > end) throw new Error('No plan came.')
    return Date.now() - pressed
  }
  const first = await when((text) => /Nothing is typed until you confirm/.test(text) && /Plan: [1-9]/.test(text))
  const whole = await when((text) => !/looked through so far/.test(text))
  await attacked.leave()
  return { first, whole }
}
