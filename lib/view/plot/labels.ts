/** Where the words in a plot stand. */
import { box, type Plot } from './plot.ts'

/** Right of the result and below the curve, or left of it when it stands at the right edge. */
export function resultPlace({ result }: Plot): { x: number; y: number; 'text-anchor': 'start' | 'end' } {
  const [x, y] = result?.at ?? [0, 0]
  const low = Math.min(Math.max(y + 14, (result?.low ?? y) + 11), box.bottom - 4)
  return x > box.right - 100
    ? { x: box.right - 2, y: low + 4, 'text-anchor': 'end' }
    : { x: x + 8, y: low, 'text-anchor': 'start' }
}

/** Left of the limit and above it, clear of the curve. */
export function limitPlace({ at: [x, y], half }: NonNullable<Plot['limit']>): {
  x: number
  y: number
  'text-anchor': 'start' | 'end'
} {
  const up = Math.max(y + 3.5, box.top + 46)
  return x - half < box.left + 110
    ? { x: box.left + 4, y: up - 12, 'text-anchor': 'start' }
    : { x: x - half - 5, y: up, 'text-anchor': 'end' }
}
