import { emptyPoint } from '../../job/empty.ts'
import type { TypedPoint } from '../../job/schema.ts'
import type { ReadingColumn } from './reading-row.tsx'

const cells = ['pressure', 'flow', 'devicePressure', 'range'] as const

/**
 * Puts pasted rows over the rows from `row` on. A block of one column goes into the column it was pasted in; of a wider
 * block, cells that it does not fill leave what stands there.
 */
export function placePaste(
  points: readonly TypedPoint[],
  row: number,
  column: ReadingColumn,
  pasted: readonly TypedPoint[],
): TypedPoint[] {
  const placed = [...points]
  const single = pasted.every((one) => cells.every((cell) => cell === 'pressure' || one[cell] === ''))
  const last = placed.at(-1)?.range ?? ''
  for (const [index, one] of pasted.entries()) {
    const old = placed[row + index] ?? { ...emptyPoint(), range: last }
    const next = { ...old }
    if (single) next[column] = one.pressure
    else for (const cell of cells) if (one[cell] !== '') next[cell] = one[cell]
    // Other readings, another story: what was left out before is read anew.
    if (next.leftOut !== undefined) next.leftOut = ''
    placed[row + index] = next
  }
  return placed
}
