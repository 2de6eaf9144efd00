/** The unit that a label asks for. */
import { cut } from '../../bounds.ts'
import { unitsLike } from '../../units/convert.ts'
import type { Item } from '../material.ts'
import { words } from '../words.ts'

/** Units as labels write them, the longer first. Matched on words with letters and digits apart. */
const spellings: readonly (readonly [RegExp, string])[] = [
  [/\bcfm\b.*\bper 100\b/, 'cfm/100ft2'],
  [/\bcfm (\d+ )?(ft 2|sf|per (square foot|sq ft|ft 2))\b/, 'cfm/ft2'],
  [/\bm 3 h m 2\b/, 'm3/(h.m2)'],
  [/\bl s m 2\b/, 'L/(s.m2)'],
  [/\bcfm( (25|50|75))?\b|\bcubic feet per minute\b|\bft 3 min\b/, 'cfm'],
  [/\bm 3 h\b|\bcubic met(er|re)s per hour\b|\bcmh\b/, 'm3/h'],
  [/\bl s\b|\blit(er|re)s per second\b/, 'L/s'],
  [/\bcu ft\b|\bft 3\b|\bcubic (feet|foot)\b|\bcf\b/, 'ft3'],
  [/\bm 3\b|\bcubic met(er|re)s\b/, 'm3'],
  [/\bsq ft\b|\bft 2\b|\bsquare (feet|foot|footage)\b|\bsf\b/, 'ft2'],
  [/\bsq in\b|\bin 2\b|\bsquare inch(es)?\b/, 'in2'],
  [/\bcm 2\b|\bsq cm\b|\bsquare centimet(er|re)s\b/, 'cm2'],
  [/\bm 2\b|\bsq m\b|\bsquare met(er|re)s\b/, 'm2'],
  [/\bach\b|\bair ?changes?\b|\bper hour\b|\bn 50\b|\b1 h\b/, '1/h'],
  [/%|\bpercent\b/, '%'],
  [/\bdeg(rees?)? f\b|\bfahrenheit\b|^f$|\b(temp\w*) f\b/, 'degF'],
  [/\bdeg(rees?)? c\b|\bcelsius\b|\b(temp\w*) c\b/, 'degC'],
  [/\bfeet\b|\bft\b/, 'ft'],
  [/\bmet(er|re)s\b|\bm$/, 'm'],
]

/** A unit stands within so many characters; each spelling looks for its second word from every first one on. */
const most = 200

const spelt = (text: string): string => words(cut(text, most).replaceAll('°', ' deg ')).join(' ')

/** The unit that a text is, with nothing beside it. */
export function wholeUnit(text: string): string | undefined {
  const whole = spelt(text)
  return spellings.find(([spelling]) => spelling.exec(whole)?.[0] === whole)?.[1]
}

/** The unit that a label asks for, as an id of lib/units. */
export function unitIn(label: string): string | undefined {
  const text = spelt(label)
  return spellings.find(([spelling]) => spelling.test(text))?.[1]
}

/** Whether an item can be written in the unit; undefined where nothing can be said. */
export function unitsAgree(item: Item, unit: string | undefined): boolean | undefined {
  if (unit === undefined || item.kind !== 'quantity') return undefined
  try {
    return (unitsLike(item.unit) as string[]).includes(unit)
  } catch {
    return undefined
  }
}
