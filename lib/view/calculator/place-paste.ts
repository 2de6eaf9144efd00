import { emptyPoint } from '../../job/empty.ts'
import { readCell } from '../../job/read-cell.ts'
import type { TypedPoint } from '../../job/schema.ts'
import type { ReadingColumn } from './reading-row.tsx'

/** Whether a pasted text holds more than what one cell takes: several lines or columns, or a line of two numbers. */
export function isBlock(text: string, column: ReadingColumn): boolean {
  const line = text.trim()
  if (/[\t\n\r;|]/.test(line)) return true
  return column !== 'range' && /\d\D*\s[-+\u2212\u2013]?\d/.test(line) && 'fault' in readCell(line, '1')
}

const cells = ['pressure', 'flow', 'devicePressure', 'range'] as const

/**
 * Puts pasted rows over the rows from `row` on. A block of one column goes into the column it was pasted in. Of a wider
 * block, columns that it does not have leave what stands there; where a reading is missing in a row of it, the cell is
 * emptied: an older reading would stand beside a new one as if both were of one point.
 */
export function placePaste(
  points: readonly TypedPoint[],
  row: number,
  column: ReadingColumn,
  pasted: readonly TypedPoint[],
): TypedPoint[] {
  const placed = [...points]
  const single = pasted.every((one) => cells.every((cell) => cell === 'pressure' || one[cell] === ''))
  const has = new Set(cells.filter((cell) => cell !== 'range' && pasted.some((one) => one[cell] !== '')))
  const last = placed.at(-1)?.range ?? ''
  for (const [index, one] of pasted.entries()) {
    const old = placed[row + index] ?? { ...emptyPoint(), range: last }
    const next = { ...old }
    if (single) next[column] = one.pressure
    else for (const cell of cells) if (one[cell] !== '' || has.has(cell)) next[cell] = one[cell]
    // Other readings, another story: what was left out before is read anew.
    if (next.leftOut !== undefined) next.leftOut = ''
    placed[row + index] = next
  }
  return placed
}

/**
 * Takes a paste back, cell by cell: `now` with each cell that still holds what was `placed` as it was `before`. What was
 * typed since stays.
 */
export function takeBackPaste(
  now: readonly TypedPoint[],
  before: readonly TypedPoint[],
  placed: readonly TypedPoint[],
): TypedPoint[] {
  const rows = now.map((point, row) => {
    const [old, pasted] = [before[row] ?? emptyPoint(), placed[row]]
    if (pasted === undefined) return point
    const next = { ...point }
    for (const cell of cells) if (point[cell] === pasted[cell]) next[cell] = old[cell]
    if (point.leftOut === pasted.leftOut && old.leftOut !== undefined) next.leftOut = old.leftOut
    return next
  })
  const last = rows.findLastIndex((point, row) => row < before.length || cells.some((cell) => point[cell] !== ''))
  return rows.slice(0, last + 1)
}
