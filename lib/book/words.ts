/** The words by which an entry is found. */

/** So much of a word is indexed; a fingerprint is still told apart by it. */
const longest = 24

/** A number with separators stands as one word; everything else is cut at what is neither letter nor digit. */
const word = /\d+(?:[.,]\d+)+|[\p{L}\p{N}]+/gu

/** Text of which each character is its own simplest form. */
const simple = /^[\0-\x7f]*$/

/** The same as `word`, for such a text after it was folded; several times as fast. */
const plainWord = /\d+(?:[.,]\d+)+|[a-z0-9]+/g

/** Lower case, without accents: what is typed in haste finds what was typed with care. */
export function fold(text: string): string {
  if (simple.test(text)) return text.toLowerCase()
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
}

/** `15,810` is also found as `15810`. */
const grouped = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/

const cut = (found: string): string => found.slice(0, longest)

/** Two words that stand together without a blank, as in a path or a permit number: far fewer entries hold both so. */
const pair = (first: string, second: string): string => `${cut(first)}/${cut(second)}`

const wordsIn = (piece: string): string[] => piece.match(simple.test(piece) ? plainWord : word) ?? []

/** The same for a text of ASCII, in one pass over it. */
function addPlain(folded: string, words: Set<string>): void {
  plainWord.lastIndex = 0
  let before = ''
  let end = 0
  for (let match = plainWord.exec(folded); match; match = plainWord.exec(folded)) {
    const [found] = match
    const short = cut(found)
    words.add(short)
    if (before && !hasBlank(folded, end, match.index)) words.add(`${before}/${short}`)
    if (found.includes(',') && grouped.test(found)) words.add(cut(found.replaceAll(',', '')))
    before = short
    end = plainWord.lastIndex
  }
}

/** Whether a blank of ASCII stands between two places. */
function hasBlank(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at++) {
    const code = text.charCodeAt(at)
    if (code === 32 || (code >= 9 && code <= 13)) return true
  }
  return false
}

/** The different words of a folded text, cut to what is indexed, and those that stand together as pairs. */
export function wordsOf(folded: string): Set<string> {
  const words = new Set<string>()
  if (simple.test(folded)) {
    addPlain(folded, words)
    return words
  }
  for (const piece of folded.split(/\s+/)) {
    let before: string | undefined
    for (const found of wordsIn(piece)) {
      words.add(cut(found))
      if (before !== undefined) words.add(pair(before, found))
      if (grouped.test(found)) words.add(cut(found.replaceAll(',', '')))
      before = found
    }
  }
  return words
}

/** A word to look for in the index: exactly, or as the beginning of a longer one. */
export type Sought = { word: string; whole: boolean }

/**
 * What is looked for: each piece between blanks must stand in the text, its last word perhaps as the beginning of a
 * longer one. `pieces` are checked in the text of an entry, `words` narrow down which entries are looked at.
 */
export function soughtIn(typed: string): { pieces: string[]; words: Sought[] } {
  const pieces = fold(typed).split(/\s+/).filter(Boolean)
  const words = pieces.flatMap((piece) => {
    const parts = wordsIn(piece)
    const [only = ''] = parts
    if (parts.length < 2) return only ? [{ word: cut(only), whole: false }] : []
    return parts.slice(1).map((part, at): Sought => {
      const whole = at < parts.length - 2 && part.length <= longest
      return { word: pair(parts[at] ?? '', part), whole }
    })
  })
  return { pieces, words }
}

/** Whether a piece stands in a folded text at the beginning of a word, as the index has words. */
export function stands(piece: string): (text: string) => boolean {
  const escaped = piece.replace(/[\\^$.*+?()[\]{}|/]/g, String.raw`\$&`)
  const inside = /^\d/.test(piece) ? String.raw`(?<!\d[.,])` : ''
  const before = /^[\p{L}\p{N}]/u.test(piece) ? String.raw`(?<![\p{L}\p{N}])` : ''
  const pattern = new RegExp(before + inside + escaped, 'u')
  return (text) => pattern.test(text)
}

/** The text that `pieces` are looked for in: each different text once, numbers without their separators too. */
export function searchable(texts: Iterable<string>): string {
  const folded = fold([...new Set(texts)].join('\n'))
  const plain = new Set<string>()
  for (const [found] of folded.matchAll(word)) if (grouped.test(found)) plain.add(found.replaceAll(',', ''))
  return plain.size > 0 ? `${folded}\n${[...plain].join('\n')}` : folded
}
