/** Reading and writing that a person can stop. */
import type { BookSource } from './json.ts'

/** Yields the same until `signal` aborts; then throws its reason. */
export async function* until<T>(parts: AsyncIterable<T>, signal: AbortSignal): AsyncGenerator<T> {
  signal.throwIfAborted()
  for await (const part of parts) {
    signal.throwIfAborted()
    yield part
  }
}

/** The same file, reading of which ends with the reason of `signal` when it aborts. */
export const stoppable = (source: BookSource, signal: AbortSignal): BookSource => ({
  ...source,
  signal,
  items: (onRead) => until(source.items(onRead), signal),
})
