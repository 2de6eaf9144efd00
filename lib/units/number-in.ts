/** The number in a text, without a word on why there is none: what is weighed in every page that is filled. */

/** Thousands in threes with one separator throughout, then perhaps a decimal mark that is another character. */
const pointMark = /^\d{1,3}([,'’\s\u00A0\u2009\u202F])\d{3}(?:\1\d{3})*(?:\.\d*)?$/
const commaMark = /^\d{1,3}([.'’\s\u00A0\u2009\u202F])\d{3}(?:\1\d{3})*,\d*$/
const manyPoints = /^\d{1,3}(?:\.\d{3}){2,}$/
const plain = /^(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i
const decimalComma = /^(?:\d+,\d*|,\d+)$/

/** A minus sign of any kind, or none, and what stands behind it. */
export const signOf = (text: string): { sign: 1 | -1; body: string } => ({
  sign: /^[-−–]/.test(text) ? -1 : 1,
  body: text.replace(/^[-−–+]\s*/, ''),
})

/**
 * A number as written: thousands separators, and a decimal point or comma. One comma before exactly three digits is a
 * thousands separator (`1,020`), unless a lone zero stands before it (`0,650`).
 *
 * @returns nothing when it is no number; infinity when it is too large
 * @example numberIn('−1,234.5') // -1234.5
 */
export function numberIn(text: string): number | undefined {
  const { sign, body } = signOf(text.trim())
  let digits: string
  if (plain.test(body)) digits = body
  else if (pointMark.test(body) && !body.startsWith('0,')) digits = body.replaceAll(/[^\d.]/g, '')
  else if (commaMark.test(body)) digits = body.replaceAll(/[^\d,]/g, '').replace(',', '.')
  else if (manyPoints.test(body)) digits = body.replaceAll('.', '')
  else if (decimalComma.test(body)) digits = body.replace(',', '.')
  else return undefined
  const value = sign * Number(digits)
  return value === 0 ? 0 : value
}
