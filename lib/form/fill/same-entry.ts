/** Whether a control of some kind took what was meant. */
import { choose } from '../choose.ts'
import { numberKinds, several } from '../kind-traits.ts'
import { inOwnNotation, type Notation } from './notation.ts'
import { sameness, type Sameness } from '../same.ts'
import type { ControlKind } from '../schema.ts'
import { squeeze } from '../words.ts'

function holdsEach(parts: readonly string[], among: readonly string[]): boolean {
  const known = new Set(among)
  return parts.every((part) => known.has(part))
}

const sameSet = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && holdsEach(one, other)

/** No box shows more choices than this at once. */
const mostChoices = 100

/** Whether a box shows several choices and nothing else, in whatever order and however it sets them apart. */
function holdsAll(intended: string, readBack: string): boolean {
  const parts = several(intended)
  if (parts.length < 2 || parts.length > mostChoices) return false
  let left = readBack
  for (const part of parts.toSorted((a, b) => b.length - a.length)) {
    if (!left.includes(part)) return false
    left = left.replace(part, '')
  }
  return /^[\s,;|·•&×]*$/.test(left)
}

/** Whether what a control of this kind shows is what was meant; with `notation`, also where the page writes it its own way. */
export function alikeIn(
  kind: ControlKind,
  intended: string,
  readBack: string,
  notation?: Notation,
): Sameness | 'in other words' {
  const same = sameness(intended, readBack)
  if (same !== 'different' && numberKinds.has(kind)) return 'same'
  if (same === 'same') return same
  const own = notation !== undefined && inOwnNotation(intended, readBack, notation)
  switch (kind) {
    case 'combobox':
      if (holdsAll(intended, readBack) || own) return 'in other words'
      return choose(intended, [], [readBack]) === undefined ? same : 'in other words'
    case 'text':
    case 'textarea':
      return own ? 'in other words' : same
    case 'rich-text':
      return intended !== '' && squeeze(readBack).includes(squeeze(intended)) ? 'same' : 'different'
    case 'multiple':
    case 'listbox':
      return sameSet(several(intended), several(readBack)) ? 'same' : 'different'
    case 'chips':
      return holdsEach(several(intended.replaceAll(/,\s*/g, ';')), several(readBack)) ? 'same' : 'different'
    default:
      return same
  }
}
