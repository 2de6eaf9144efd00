/** Saving at every keystroke, without ever letting an earlier text win over a later one. */

export interface Keeper<T> {
  /** Saves `value` as soon as the write before it has ended; of several that wait, the last one is written. */
  keep: (value: T) => void
  /** Writes what waits at once, without waiting for the write under way: for a page that is about to close. */
  flush: () => void
}

interface Options<T> {
  /** Two values with the same id are versions of the same thing. */
  id: (value: T) => string
  save: (value: T) => Promise<unknown>
  onKept: () => void
  onFailed: (error: unknown) => void
}

export function createKeeper<T>({ id, save, onKept, onFailed }: Options<T>): Keeper<T> {
  const waiting = new Map<string, T>()
  let running: Promise<void> | undefined

  async function run(): Promise<void> {
    for (let next = waiting.entries().next(); !next.done; next = waiting.entries().next()) {
      const [key, value] = next.value
      waiting.delete(key)
      try {
        await save(value)
        if (waiting.size === 0) onKept()
      } catch (error) {
        onFailed(error)
      }
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
      for (const value of waiting.values()) save(value).catch(onFailed)
      waiting.clear()
    },
  }
}
