/** Numbers inside the sentences of working and checks. */

/** By how many digits to move the point, and by what to multiply for that. */
const tens = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11]

/** `whole / 10^places` in digits. Those of whole numbers are found in half the time of those of fractions. */
function fraction(whole: number, places: number): string {
  const scale = tens[places]!
  const units = Math.floor(whole / scale)
  let rest = whole - units * scale
  if (rest === 0) return String(units)
  let left = places
  for (; rest % 10 === 0; rest /= 10) left--
  return `${units}.${String(rest).padStart(left, '0')}`
}

/**
 * A number at up to six significant digits, short enough for a sentence.
 *
 * @example short(1.62205e-4) // '0.000162205'
 */
export function short(value: number, digits = 6): string {
  const size = Math.abs(value)
  const places = digits - 1 - Math.floor(Math.log10(size))
  const scale = tens[places]
  // A report says hundreds of numbers: toPrecision is slow and kept for the very large and small.
  if (scale === undefined || size < 1e-6) return String(Number(value.toPrecision(digits)))
  const text = fraction(Math.round(size * scale), places)
  return value < 0 ? `-${text}` : text
}

/**
 * Named values in one line.
 *
 * @example named(['Q50', 433, 'cfm'], ['n', 0.65]) // 'Q50 = 433 cfm, n = 0.65'
 */
export function named(...values: (readonly [name: string, value: number, unit?: string])[]): string {
  let text = ''
  for (const [name, value, unit] of values) {
    text += `${text === '' ? '' : ', '}${name} = ${short(value)}${unit && unit !== '1' ? ` ${unit}` : ''}`
  }
  return text
}
