/** Numbers inside the sentences of working and checks. */

/** Powers of ten that are exact as numbers. */
const tens = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`))

/**
 * A number at up to six significant digits, short enough for a sentence.
 *
 * @example short(1.62205e-4) // '0.000162205'
 */
export function short(value: number, digits = 6): string {
  const size = Math.abs(value)
  const scale = tens[digits - 1 - Math.floor(Math.log10(size))]
  // A report says some two hundred numbers: toPrecision, slow, is kept for the very large and small ones.
  if (scale === undefined) return String(Number(value.toPrecision(digits)))
  return String((Math.sign(value) * Math.round(size * scale)) / scale)
}

/**
 * Named values in one line.
 *
 * @example named(['Q50', 433, 'cfm'], ['n', 0.65]) // 'Q50 = 433 cfm, n = 0.65'
 */
export function named(...values: (readonly [name: string, value: number, unit?: string])[]): string {
  return values
    .map(([name, value, unit]) => `${name} = ${short(value)}${unit && unit !== '1' ? ` ${unit}` : ''}`)
    .join(', ')
}
