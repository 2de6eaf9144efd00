/** Work that waits until a page has come to rest. */

/** A page that never rests is looked at so much later than it began to move, in ms. */
const most = 2000

/** Runs the work once calls have ceased for `quiet` ms, or have gone on for too long; not after the signal aborts. */
export function whenQuiet(work: () => void, quiet: number, signal: AbortSignal): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  let due = 0
  const run = () => {
    timer = undefined
    work()
  }
  signal.addEventListener('abort', () => clearTimeout(timer))
  return () => {
    const now = performance.now()
    if (timer === undefined) due = now + most
    clearTimeout(timer)
    timer = setTimeout(run, Math.min(quiet, due - now))
  }
}
