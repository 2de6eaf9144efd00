/** What the bytes of a file say before anything is made of them: why it is no PDF that can be filled, if so. */
import { say } from '../words/say.ts'
import { bounds } from './bounds.ts'

const latin = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes)

const megabytes = (bytes: number): number => Math.ceil(bytes / 1_000_000)

/** Why a file of so many bytes is not even read; empty when it is. */
export const whyTooBig = (size: number): string =>
  size > bounds.file
    ? say`This file has ${megabytes(size)} MB, and at most ${bounds.file / 1_000_000} MB are opened here. Use the form itself, without photos or plans in it.`
    : ''

/** Why the bytes are not opened; empty when nothing speaks against it. */
export function whyNot(bytes: Uint8Array): string {
  if (bytes.length === 0) return say`This file is empty. Fetch the form once more from where it comes from.`
  const big = whyTooBig(bytes.length)
  if (big) return big
  if (!latin(bytes.subarray(0, 1024)).includes('%PDF-'))
    return say`This file is not a PDF. Choose the form as the office gives it out, a file that ends in .pdf.`
  if (!/startxref|%%EOF/.test(latin(bytes.subarray(-4096))))
    return say`The end of this file is missing: it was cut off while it was saved or sent. Fetch the form once more.`
  const all = latin(bytes)
  if (/\/UR3?\s*(<<|\d+ \d+ R)/.test(all))
    return say`This form carries usage rights of the program that made it, which any change would break. Ask the office for the form without them, or fill it in that program.`
  if (/\/ByteRange\s*\[/.test(all))
    return say`This PDF is signed, and filling it would break the signature. Use an empty form that nobody has signed.`
  return ''
}

/** How often a stream was packed, one time within the other. */
const packings = /\/(FlateDecode|Fl|LZWDecode|LZW|RunLengthDecode|RL)\b/g

/** Unpacks once; hears each piece, and ends when that says so. */
async function unpack(packed: Uint8Array, hear: (piece: Uint8Array) => boolean): Promise<void> {
  const reader = new Blob([packed as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough(new DecompressionStream('deflate') as unknown as ReadableWritablePair<Uint8Array, Uint8Array>)
    .getReader()
  try {
    for (;;) {
      const { done, value } = await reader.read()
      if (done || hear(value)) break
    }
  } catch {
    // What is damaged in a stream ends it: the library takes what came before, too.
  }
  await reader.cancel().catch(() => {})
}

/** How many bytes a stream unpacks to, as far as `most`. */
async function unpacked(packed: Uint8Array, times: number, most: number): Promise<number> {
  let inner = packed
  if (times > 1) {
    const pieces: Uint8Array<ArrayBuffer>[] = []
    let size = 0
    await unpack(packed, (piece) => {
      pieces.push(piece as Uint8Array<ArrayBuffer>)
      return (size += piece.length) > bounds.file
    })
    if (size > bounds.file) return most + 1
    inner = new Uint8Array(await new Blob(pieces).arrayBuffer())
  }
  let count = 0
  await unpack(inner, ({ length }) => (count += length) > most)
  return count
}

/**
 * Whether the streams of a file unpack to more than a form needs. They are unpacked here once, a piece at a time, and
 * forgotten; what the file says of their lengths is not asked.
 * @param signal ends it early, with what is known by then
 */
export async function bursts(bytes: Uint8Array, signal?: AbortSignal): Promise<boolean> {
  const all = latin(bytes)
  let left: number = bounds.unpacked
  let behind = 0
  for (const { index, 0: mark } of all.matchAll(/\bstream\r?\n/g)) {
    if (signal?.aborted) return false
    if (index < behind || all.slice(index - 3, index) === 'end') continue
    const dictionary = all.slice(Math.max(behind, index - 4000), index)
    const own = dictionary.slice(dictionary.lastIndexOf(' obj') + 1)
    const times = [...own.matchAll(packings)].length
    const start = index + mark.length
    const end = all.indexOf('endstream', start)
    behind = end < 0 ? all.length : end
    if (times === 0) continue
    if (times > 2) return true
    const most = Math.min(left, bounds.stream)
    // The line break before the keyword is no part of it.
    const packed = bytes.subarray(
      start,
      all[behind - 1] === '\n' ? behind - (all[behind - 2] === '\r' ? 2 : 1) : behind,
    )
    const count = await unpacked(packed, times, most)
    if (count > most) return true
    left -= count
  }
  return false
}
