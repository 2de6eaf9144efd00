/** What a control shows of the way it wants a value written: decimals, order of a date, length. */
import type { Control } from './controls.ts'
import { patternIn } from '../dates.ts'
import { tidy } from '../words.ts'

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
  return /^en-(us|ph)$/i.test(languageOf(control)) ? 'MM/dd/yyyy' : 'yyyy-MM-dd'
}

/** Language that the page names around the control. */
export const languageOf = ({ element }: Control): string =>
  element.closest('[lang]')?.getAttribute('lang') ?? element.ownerDocument.documentElement.lang
