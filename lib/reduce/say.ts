/** Numbers inside the sentences of working and checks. */

/**
 * A number at up to six significant digits, short enough for a sentence.
 *
 * @example short(1.62205e-4) // '0.000162205'
 */
export function short(value: number, digits = 6): string {
  return String(Number(value.toPrecision(digits)))
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
