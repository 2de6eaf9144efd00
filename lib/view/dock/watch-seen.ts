/** Whether a person sees the dock: nothing of the page lies over it, however it is drawn and whatever the pointer meets. */

/** The second version of the observer, which Chromium has (https://w3c.github.io/IntersectionObserver/v2/). */
interface Visible extends IntersectionObserverEntry {
  isVisible?: boolean
}

/** Several sizes of what is seen, so that each change of it is told. */
const threshold = [0, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99, 1]

/** So long a press waits for the browser's first answer, in ms. */
const patience = 1500

/**
 * Watches an element until the signal aborts.
 * @param change hears each time the answer is another one
 * @returns what the browser says, once it has said something; undefined where it cannot say
 */
export function watchSeen(
  element: Element,
  change: (seen: boolean) => void,
  signal: AbortSignal,
): () => Promise<boolean | undefined> {
  if (!('isVisible' in IntersectionObserverEntry.prototype)) return () => Promise.resolve(undefined)
  let seen: boolean | undefined
  const { promise: first, resolve: told } = Promise.withResolvers<void>()
  const observer = new IntersectionObserver(
    (entries) => {
      const last = entries.at(-1) as Visible | undefined
      if (!last) return
      const now = last.isVisible === true && last.intersectionRatio > 0.98
      if (now !== seen) change(now)
      seen = now
      told()
    },
    { threshold, trackVisibility: true, delay: 100 } as IntersectionObserverInit,
  )
  observer.observe(element)
  signal.addEventListener('abort', () => observer.disconnect())
  return async () => {
    // A press right after the dock has come is judged by the first answer; without one nobody has seen it.
    await Promise.race([first, new Promise((resolve) => setTimeout(resolve, patience))])
    return seen === true
  }
}
