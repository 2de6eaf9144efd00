/** Which rows of a long table are drawn. */

/** How many rows are drawn before the person asks for more. */
export const firstRows = 200

/**
 * Row numbers to draw of `total`: the first `shown`, and the last one to type on. `hidden` rows between them are not
 * drawn.
 */
export function rowWindow(total: number, shown: number): { rows: number[]; hidden: number } {
  const head = Math.min(total, Math.max(1, shown))
  const rows = Array.from({ length: head }, (_, row) => row)
  if (head < total) rows.push(total - 1)
  return { rows, hidden: total - rows.length }
}
