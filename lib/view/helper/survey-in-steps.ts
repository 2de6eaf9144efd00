/** Looking at a page with thousands of controls without holding it up: what is there is said as it is found. */
import { surveying, type Survey } from '../../form/page/controls.ts'
import { lookOnce } from '../../form/page/look.ts'

/** So long the page is looked at in one go, in ms: then it may draw, and answer the person. */
const atOnce = 400

/**
 * Says what the page has: at once, and where that takes long again each time after twice as long, until it is whole.
 * @param take hears what was found by then, and whether that is all of it; first before this returns
 */
export function surveyInSteps(
  document: Document,
  take: (seen: Survey, whole: boolean) => void,
  signal: AbortSignal,
): void {
  const steps = surveying(document)
  let [looks, next] = [0, 1]
  const goOn = () => {
    if (signal.aborted) return
    const end = performance.now() + atOnce
    const step = lookOnce(() => {
      let one = steps.next()
      while (!one.done && performance.now() < end) one = steps.next()
      return one
    })
    if (step.done) return take(step.value, true)
    looks++
    if (looks === next) {
      next *= 2
      take(step.value(), false)
    }
    setTimeout(goOn)
  }
  goOn()
}
