import type { ComponentChildren } from 'preact'
import { say } from '../../words/say.ts'

/** A run of a formula: plain, a symbol (italic), below or above the line. */
export interface Run {
  as: 'plain' | 'symbol' | 'below' | 'above'
  text: string
}

/**
 * A unit stays upright, wherever it stands. A single letter that stands alone and is no unit is a symbol; `_x`, `_{x}` go
 * below the line, `^x`, `^{x}`, `^(x)` above it.
 */
const pattern =
  /(?:m[²³]|(?<![\p{L}])L)(?:\/(?:[hs](?![\p{L}])|\([hs]·m²\)))?(?:\/Pa)?|([_^])(\{[^}]*\}|\([^)]*\)|[\w.−-]+)|(?<![\p{L}\d°/]|\d (?=m))(Δ?)(\p{L})(?![\p{L}\d(])/gu

/** Splits a formula written in plain text into runs. */
export function runs(formula: string): Run[] {
  const found: Run[] = []
  const add = (as: Run['as'], text: string) => {
    if (text) found.push({ as, text })
  }
  let end = 0
  for (const match of formula.matchAll(pattern)) {
    add('plain', formula.slice(end, match.index))
    if (!match[1] && !match[4]) add('plain', match[0])
    else if (match[1]) {
      add(match[1] === '_' ? 'below' : 'above', match[2]!.replace(/^[{(](.*)[})]$/, '$1'))
    } else {
      add('plain', match[3]!)
      add('symbol', match[4]!)
    }
    end = match.index + match[0].length
  }
  add('plain', formula.slice(end))
  return found
}

const draw = ({ as, text }: Run): ComponentChildren =>
  as === 'symbol' ? <i>{text}</i> : as === 'below' ? <sub>{text}</sub> : as === 'above' ? <sup>{text}</sup> : text

/** A test of thousands of points makes lines that nobody reads to the end. */
const longest = 600

/** Typographic minus, and units as they stand beside the figures: `m³/(h·m²)`. */
export const typeset = (text: string): string =>
  text
    .replaceAll(/(^|[\s(=|:])-(?=\d)/g, '$1−')
    .replaceAll(/(?<=\/\([hs])\.(?=m2\))/g, '·')
    .replaceAll('100ft2', '100 ft2')
    .replaceAll(/(?<=(?:^|[\d\s/(·.])(?:ft|m|in|cm))([23])(?![\d\w])/g, (power) => (power === '2' ? '²' : '³'))

/** A formula written in plain text, set as a paper would. */
export function Formula({ text, class: className = 'f' }: { text: string; class?: string }) {
  const whole = typeset(text)
  const shown =
    whole.length > longest ? say`${whole.slice(0, longest)}… and ${whole.length - longest} characters more` : whole
  return <span class={className}>{runs(shown).map(draw)}</span>
}
