/** Whether a control of some kind took what was meant. */
import { choose } from './choose.ts'
import { numberKinds, several } from './kinds.ts'
import { sameness, type Sameness } from './same.ts'
import type { ControlKind } from './schema.ts'
import { squeeze } from './words.ts'

const sameSet = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((each) => other.includes(each))

/** Whether a box shows several choices and nothing else, in whatever order and however it sets them apart. */
function holdsAll(intended: string, readBack: string): boolean {
  const parts = several(intended)
  if (parts.length < 2) return false
  let left = readBack
  for (const part of parts.toSorted((a, b) => b.length - a.length)) {
    if (!left.includes(part)) return false
    left = left.replace(part, '')
  }
  return /^[\s,;|·•&×]*$/.test(left)
}

export function alikeIn(kind: ControlKind, intended: string, readBack: string): Sameness | 'in other words' {
  const same = sameness(intended, readBack)
  if (same !== 'different' && numberKinds.has(kind)) return 'same'
  if (same === 'same') return same
  switch (kind) {
    case 'combobox':
      if (holdsAll(intended, readBack)) return 'in other words'
      return choose(intended, [], [readBack]) === undefined ? same : 'in other words'
    case 'rich-text':
      return intended !== '' && squeeze(readBack).includes(squeeze(intended)) ? 'same' : 'different'
    case 'multiple':
    case 'listbox':
      return sameSet(several(intended), several(readBack)) ? 'same' : 'different'
    case 'chips':
      return several(intended.replaceAll(/,\s*/g, ';')).every((each) => several(readBack).includes(each))
        ? 'same'
        : 'different'
    default:
      return same
  }
}
