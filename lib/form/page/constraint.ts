/** Whether a control's own limits will take a text, before it is typed. */
import { cut } from '../../bounds.ts'
import type { Control } from './controls.ts'
import { numberKinds } from '../kind-traits.ts'
import { say } from '../../words/say.ts'

/** Whether the page's pattern could take the browser long: more than a few repetitions without end, or one of a group. */
const slow = (pattern: string): boolean =>
  pattern.length > 300 || /\)([*+]|\{\d*,\})/.test(pattern) || (pattern.match(/[*+]|\{\d*,\}/g) ?? []).length > 3

/** Whether the browser says that the text is not of the page's pattern; one that may be slow is left to the page. */
function breaks(pattern: string, text: string): boolean {
  if (text.length > 100 || slow(pattern)) return false
  const probe = document.createElement('input')
  Object.assign(probe, { pattern, value: text })
  return probe.validity.patternMismatch
}

/** The limit that the text breaks, in words; nothing when it keeps them all. */
export function constraint({ kind, element }: Control, text: string): string {
  const input = element as HTMLInputElement
  if (text === '') return ''
  if (numberKinds.has(kind)) {
    const limit = (name: 'min' | 'max') => input.getAttribute(name) ?? input.getAttribute(`aria-value${name}`) ?? ''
    const [value, min, max] = [Number(text), limit('min'), limit('max')]
    if (min !== '' && value < Number(min)) return say`the page takes ${min} or more`
    if (max !== '' && value > Number(max)) return say`the page takes ${max} at most`
    const step = Number(input.getAttribute('step') ?? NaN)
    const steps = (value - Number(min || 0)) / step
    if (step > 0 && Math.abs(steps - Math.round(steps)) > 1e-6) return say`the page takes steps of ${step} only`
    return ''
  }
  if (kind === 'date' || kind === 'time' || kind === 'month' || kind === 'date-time') {
    if (input.min && text < input.min) return say`the page takes ${input.min} or later`
    if (input.max && text > input.max) return say`the page takes ${input.max} or earlier`
  }
  if (kind !== 'text' || !input.pattern) return ''
  return breaks(input.pattern, text) ? say`the page wants the form ${cut(input.title || input.pattern, 100)}` : ''
}
