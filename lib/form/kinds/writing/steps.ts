/** Moving a drawn handle or spin button to a number with the arrow keys. */
import { bareValue } from '../../page/bare.ts'
import { strike } from './press.ts'
import { byHand } from './reasons.ts'
import { pause, until } from './wait.ts'
import { say } from '../../../words/say.ts'

const valueOf = (element: Element): number => Number(element.getAttribute('aria-valuenow') ?? bareValue(element) ?? NaN)

/** Strikes arrow keys until the value is reached or passed; says so when the page's steps do not meet it. */
export async function stepTo(
  element: HTMLElement,
  wanted: number,
  [up, down]: [string, string],
): Promise<string | undefined> {
  element.focus({ preventScroll: true })
  const limits = ['min', 'max'].map((name) => element.getAttribute(`aria-value${name}`) ?? element.getAttribute(name))
  const [min, max] = limits.map((limit) => (limit === null ? undefined : Number(limit)))
  if ((min !== undefined && wanted < min) || (max !== undefined && wanted > max))
    return say`takes ${min ?? '…'} to ${max ?? '…'}, not ${wanted}`
  try {
    for (let count = 0; count < 2000; count++) {
      const now = valueOf(element)
      if (now === wanted) return undefined
      strike(element, wanted > now || Number.isNaN(now) ? up : down)
      if (valueOf(element) === now) await pause(0)
      const moved = await until(() => valueOf(element) !== now, 300, 5)
      if (!moved) return byHand
      const after = valueOf(element)
      // Passed between two steps: the nearer of both stays, and is read back as it is.
      if (!Number.isNaN(now) && after > wanted !== now > wanted && after !== wanted) {
        if (Math.abs(now - wanted) < Math.abs(after - wanted)) strike(element, after > wanted ? down : up)
        return undefined
      }
    }
    return byHand
  } finally {
    element.blur()
  }
}
