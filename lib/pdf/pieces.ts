/** The words printed on a page of a PDF, in pieces that stand together. */
import { bounds } from './bounds.ts'
import type { Box } from './fields.ts'
import type { PdfPage } from './library.ts'

export interface Piece extends Box {
  text: string
  /** Letter size in points. */
  size: number
}

interface Item {
  str: string
  width: number
  height: number
  transform: number[]
}

/** The same matrix product as the library's own, which comes with its drawing part. */
const product = (m: readonly number[], n: readonly number[]): number[] => {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = m
  const [p = 1, q = 0, r = 0, s = 1, t = 0, u = 0] = n
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f]
}

/** Lines to write on are often typed as underscores or dots: what stands between them is apart. */
const leaders = /_{2,}|\.{4,}|…{2,}/g

function* split({ text, left, right, ...rest }: Piece): Generator<Piece> {
  const share = (right - left) / Math.max(1, text.length)
  let from = 0
  const part = (start: number, end: number): Piece | undefined => {
    const words = text.slice(start, end)
    const begin = start + words.length - words.trimStart().length
    const close = start + words.trimEnd().length
    if (begin >= close) return undefined
    return { text: text.slice(begin, close), left: left + begin * share, right: left + close * share, ...rest }
  }
  for (const found of text.matchAll(leaders)) {
    const before = part(from, found.index)
    if (before) yield before
    from = found.index + found[0].length
  }
  const last = part(from, text.length)
  if (last) yield last
}

/** Joins what stands on one line without a gap that a field or a column could stand in. */
function join(pieces: Piece[]): Piece[] {
  const lines: Piece[][] = []
  for (const piece of pieces.toSorted((a, b) => a.bottom - b.bottom || a.left - b.left)) {
    const line = lines.at(-1)
    const first = line?.[0]
    if (line && first && Math.abs(first.bottom - piece.bottom) < 0.35 * Math.max(first.size, piece.size))
      line.push(piece)
    else lines.push([piece])
  }
  return lines.flatMap((line) => {
    const joined: Piece[] = []
    for (const piece of line.toSorted((a, b) => a.left - b.left)) {
      const before = joined.at(-1)
      const gap = before ? piece.left - before.right : Infinity
      if (!before || gap > 0.9 * piece.size || gap < -2 * piece.size) joined.push({ ...piece })
      else {
        before.text += (gap > 0.12 * piece.size ? ' ' : '') + piece.text
        before.right = Math.max(before.right, piece.right)
        before.top = Math.min(before.top, piece.top)
        before.size = Math.max(before.size, piece.size)
      }
    }
    return joined
  })
}

/** The pieces of a page that read upright, from its top to its foot. */
export async function piecesOf(page: PdfPage): Promise<Piece[]> {
  const { items } = await page.getTextContent()
  const { transform } = page.getViewport({ scale: 1 })
  const pieces: Piece[] = []
  for (const item of items.slice(0, bounds.pieces) as Item[]) {
    if (typeof item.str !== 'string' || item.str.trim() === '') continue
    const [a = 0, b = 0, c = 0, d = 0, x = 0, y = 0] = product(transform, item.transform)
    const size = Math.hypot(c, d)
    // What runs up or down the page is no label of what stands beside it.
    if (a <= 0 || Math.abs(b) > 0.2 * a) continue
    const at = { left: x, right: x + item.width, top: y - 0.75 * size, bottom: y + 0.2 * size }
    pieces.push(...split({ ...at, size, text: item.str.slice(0, 2 * bounds.label) }))
  }
  const joined = join(pieces)
  for (const piece of joined) piece.text = piece.text.replaceAll(/\s+/g, ' ').trim().slice(0, bounds.label)
  return joined.filter(({ text }) => /[\p{L}\p{N}]/u.test(text))
}
