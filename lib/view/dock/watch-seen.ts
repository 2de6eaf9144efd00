/** Whether a person sees the dock: nothing of the page lies over it, however it is drawn and whatever the pointer meets. */

/** The second version of the observer, which Chromium has (https://w3c.github.io/IntersectionObserver/v2/). */
interface Visible extends IntersectionObserverEntry {
  isVisible?: boolean
}

/** Several sizes of what is seen, so that each change of it is told. */
const threshold = [0, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99, 1]

/** So long a press waits for an answer of the browser, in ms. */
const patience = 1500

const after = (ms: number) => new Promise<undefined>((resolve) => setTimeout(resolve, ms))

/** Asks the browser whether the element is seen, and hears the answers until what it returns is called. */
function ask(element: Element, hear: (seen: boolean) => void): () => void {
  const observer = new IntersectionObserver(
    (entries) => {
      const last = entries.at(-1) as Visible | undefined
      if (last) hear(last.isVisible === true && last.intersectionRatio > 0.98)
    },
    { threshold, trackVisibility: true, delay: 100 } as IntersectionObserverInit,
  )
  observer.observe(element)
  return () => observer.disconnect()
}

/** What the browser says at this moment: its reports of changes come up to a tenth of a second late. */
async function look(element: Element): Promise<boolean> {
  const { promise, resolve } = Promise.withResolvers<boolean>()
  const stop = ask(element, resolve)
  const seen = await Promise.race([promise, after(patience)])
  stop()
  return seen === true
}

/**
 * Watches an element until the signal aborts.
 * @param change hears each time the answer is another one
 * @returns what a press asks: whether a person saw the element when they pressed, and sees it still; undefined where
 * the browser cannot say
 */
export function watchSeen(
  element: Element,
  change: (seen: boolean) => void,
  signal: AbortSignal,
): () => Promise<boolean | undefined> {
  if (!('isVisible' in IntersectionObserverEntry.prototype)) return () => Promise.resolve(undefined)
  let seen: boolean | undefined
  const { promise: first, resolve: told } = Promise.withResolvers<void>()
  const stop = ask(element, (now) => {
    if (now !== seen) change(now)
    seen = now
    told()
  })
  signal.addEventListener('abort', stop)
  return async () => {
    // A press right after the dock has come is judged by the first answer; without one nobody has seen it.
    await Promise.race([first, after(patience)])
    return seen === true && (await look(element)) && seen
  }
}
