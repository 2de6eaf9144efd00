import { bounds } from '../bounds.ts'
import type { Sealed } from './backup.ts'
import { refuse } from './error.ts'
import { say } from '../words/say.ts'

/** What can be read from its beginning, as often as need be: a file, or one that is decrypted while it is read. */
export interface Readable {
  stream: () => ReadableStream<Uint8Array<ArrayBuffer>>
  /** Bytes, as far as known. */
  size: number
  /** Of a backup, what opens it again elsewhere. */
  sealed?: Sealed
}

/** The lines of a file as bytes, without their line breaks; the file is never in memory as a whole. */
export async function* linesOf(file: Pick<Readable, 'stream'>): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const reader = file.stream().getReader()
  let ended = false
  try {
    yield* linesFrom(reader, () => {
      ended = true
    })
  } finally {
    // Whoever stops reading lets go of the file.
    if (!ended) await reader.cancel().catch(() => undefined)
  }
}

async function* linesFrom(
  reader: ReadableStreamDefaultReader<Uint8Array<ArrayBuffer>>,
  onEnd: () => void,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  let parts: Uint8Array<ArrayBuffer>[] = []
  let held = 0
  let line = 1
  for (;;) {
    const { done, value } = await reader.read()
    if (done) {
      onEnd()
      break
    }
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
