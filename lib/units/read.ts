/** Numbers read from what a person typed or pasted. */

import { say } from '../words/say.ts'
import type { Marks } from './marks.ts'
import { numberIn, signOf } from './number-in.ts'

export interface NumberProblem {
  code: 'empty' | 'not a number' | 'too large' | 'two ways'
  /** What is wrong and what to do, one sentence. */
  message: string
}

const spaces = /[\s\u00A0\u2009\u202F]/

/** Thousands to one, a decimal with three places to another. */
const eitherWay = /^([1-9]\d{0,2})[.,](\d{3})$/

/**
 * A number as typed: a minus sign of any kind, thousands separators, and a decimal point or comma. One comma before
 * exactly three digits is a thousands separator (`1,020`), unless a lone zero stands before it (`0,650`).
 *
 * @param marks what the numbers beside it tell: among decimal commas `1.020` is a thousand and twenty, and `1,020` is
 *   asked about
 * @returns the number, or why there is none
 * @example readNumber('−1,234.5') // -1234.5
 */
export function readNumber(text: string, marks?: Marks): number | NumberProblem {
  const trimmed = text.trim()
  if (trimmed === '') return { code: 'empty', message: say`Type a number.` }
  const { sign, body } = signOf(trimmed)
  const either = eitherWay.exec(body)
  if (either && marks === 'comma' && body.includes('.')) return sign * Number(body.replace('.', ''))
  const [, whole, part] = ((marks === 'comma' || marks === 'both') && either) || []
  if (whole !== undefined && part !== undefined) {
    const message = say`“${trimmed}” can be read two ways: type ${whole + part} or ${`${whole},${part}0`}.`
    return { code: 'two ways', message }
  }
  const value = numberIn(trimmed)
  if (value === undefined) {
    const words = spaces.test(body) ? say`one number only` : say`digits only, for example 433 or 1,020.5`
    return { code: 'not a number', message: say`“${trimmed}” is not a number: type ${words}.` }
  }
  if (!Number.isFinite(value)) return { code: 'too large', message: say`“${trimmed}” is too large: check the digits.` }
  return value
}
