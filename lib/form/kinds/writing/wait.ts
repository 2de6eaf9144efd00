/** Waiting for a page that answers later. Timers, not frames: a window in the background draws no frames. */

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds)
  })

/** The first answer that is neither undefined nor false, asked for again until the time is over. */
export async function until<T>(ask: () => T | undefined | false, limit = 600, every = 20): Promise<T | undefined> {
  const end = Date.now() + limit
  for (;;) {
    const answer = ask()
    if (answer !== undefined && answer !== false) return answer
    if (Date.now() >= end) return undefined
    await pause(every)
  }
}
