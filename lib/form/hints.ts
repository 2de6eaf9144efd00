/** What a control shows of the way it wants a value written: unit, decimals, order of a date, length. */
import type { Control } from './controls.ts'
import { patternIn } from './dates.ts'
import { tidy, words } from './words.ts'

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

/** The unit that a label asks for, as an id of lib/units. */
export function unitIn(label: string): string | undefined {
  const text = words(label.replaceAll('°', ' deg ')).join(' ')
  return spellings.find(([spelling]) => spelling.test(text))?.[1]
}

const counts: readonly (readonly [RegExp, number])[] = [
  [/\bwhole (number|feet|cfm)s?\b|\bno decimals?\b|\bnearest whole\b|\bintegers?\b/i, 0],
  [/\bone decimal\b|\b1 decimal\b|\bnearest (tenth|0\.1)\b/i, 1],
  [/\btwo decimals?\b|\b2 decimals?\b|\bnearest (hundredth|0\.01)\b/i, 2],
  [/\bthree decimals?\b|\b3 decimals?\b/i, 3],
]

/** Decimals that the control wants: from its step, from words in the label, from a number shown as an example. */
export function decimalsIn(control: Control): number | undefined {
  const input = control.element as HTMLInputElement
  if (control.kind === 'spinbutton' || (control.kind === 'slider' && input.localName !== 'input')) return undefined
  if ((control.kind === 'number' || control.kind === 'slider') && input.step !== 'any') {
    // Without a step attribute a number input takes whole numbers only (HTML standard).
    return /\.(\d+)$/.exec(input.step)?.[1]?.length ?? 0
  }
  const said = counts.find(([wording]) => wording.test(`${control.name} ${input.title} ${input.placeholder}`))
  if (said) return said[1]
  const example = /^(?:e\.?g\.?,?\s*)?\d[\d,' ]*(?:[.](\d+))?$/i.exec(tidy(input.placeholder ?? ''))
  return example ? (example[1]?.length ?? 0) : undefined
}

/** The order and marks of a date typed as text. Without a sign of it: the page's language decides. */
export function datePatternIn(control: Control): string {
  const box = /^(?:test )?(day|month|year)$/i.exec(control.name)?.[1]?.toLowerCase()
  if (box) return { day: 'd', month: 'M', year: 'yyyy' }[box] ?? 'yyyy'
  const input = control.element as HTMLInputElement
  for (const text of [input.placeholder, control.name, input.title]) {
    const pattern = patternIn(text ?? '')
    if (pattern) return pattern
  }
  const language =
    control.element.closest('[lang]')?.getAttribute('lang') ?? control.element.ownerDocument.documentElement.lang
  return /^en-(us|ph)$/i.test(language) ? 'MM/dd/yyyy' : 'yyyy-MM-dd'
}
