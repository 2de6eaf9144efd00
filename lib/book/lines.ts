import { bounds } from '../bounds.ts'
import { refuse } from './error.ts'
import { say } from '../words/say.ts'

/** The lines of a file as bytes, without their line breaks; the file is never in memory as a whole. */
export async function* linesOf(file: Blob): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const reader = file.stream().getReader()
  let parts: Uint8Array<ArrayBuffer>[] = []
  let held = 0
  let line = 1
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    let from = 0
    for (let at = value.indexOf(10); at >= 0; at = value.indexOf(10, from)) {
      yield joined([...parts, value.subarray(from, at)])
      line++
      parts = []
      held = 0
      from = at + 1
    }
    parts.push(value.subarray(from))
    held += value.length - from
    if (held > bounds.line) {
      await reader.cancel()
      throw refuse(
        `line ${line}`,
        say`Line ${line} of the file is longer than any that a book writes. Choose another file.`,
      )
    }
  }
  if (held > 0) yield joined(parts)
}

function joined(parts: readonly Uint8Array<ArrayBuffer>[]): Uint8Array<ArrayBuffer> {
  const [only] = parts
  if (parts.length === 1 && only) return only
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all
}
