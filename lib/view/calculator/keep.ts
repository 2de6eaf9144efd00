/** Saving at every keystroke, without ever letting an earlier text win over a later one. */

export interface Keeper<T> {
  /** Saves `value` as soon as the write before it has ended; of several that wait, the last one is written. */
  keep: (value: T) => void
  /** Writes what has not reached the book yet, without waiting for anything: for a page that is about to close. */
  flush: () => void
  /** Whether something is on its way to the book. */
  busy: () => boolean
  /** Changes what waits under an id, if something does. */
  revise: (id: string, change: (value: T) => T) => void
}

interface Options<T> {
  /** Two values with the same id are versions of the same thing. */
  id: (value: T) => string
  save: (value: T) => Promise<unknown>
  /** Writes in one request, for a page that may be gone before a second one; `save` when left out. */
  saveAtOnce?: (value: T) => Promise<unknown>
  onKept: () => void
  onFailed: (error: unknown) => void
}

export function createKeeper<T>({ id, save, saveAtOnce = save, onKept, onFailed }: Options<T>): Keeper<T> {
  const waiting = new Map<string, T>()
  let underWay: T | undefined
  let running: Promise<void> | undefined
  let flushing: Promise<unknown> | undefined
  /** Whether a flush has written what is under way, or newer: a closing page flushes twice, the second time nothing older. */
  let overtaken = false

  async function run(): Promise<void> {
    while (waiting.size > 0) {
      // A page that was only hidden lives on: what was flushed is older than what is typed after.
      if (flushing) await flushing
      const next = waiting.entries().next()
      if (next.done) break
      const [key, value] = next.value
      waiting.delete(key)
      underWay = value
      overtaken = false
      try {
        await save(value)
        if (waiting.size === 0) onKept()
      } catch (error) {
        onFailed(error)
      }
      underWay = undefined
    }
    running = undefined
  }

  return {
    keep(value) {
      waiting.delete(id(value))
      waiting.set(id(value), value)
      running ??= run()
    },
    flush() {
      if (underWay !== undefined && !overtaken && !waiting.has(id(underWay))) waiting.set(id(underWay), underWay)
      overtaken = underWay !== undefined
      if (waiting.size === 0) return
      const writes = [...waiting.values()].map((value) => saveAtOnce(value).catch(onFailed))
      waiting.clear()
      const all = Promise.all(writes).finally(() => {
        if (flushing === all) flushing = undefined
      })
      flushing = all
    },
    revise(key, change) {
      const value = waiting.get(key)
      if (value !== undefined) waiting.set(key, change(value))
    },
    busy: () => running !== undefined || flushing !== undefined,
  }
}
