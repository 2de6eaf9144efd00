import { Hatch } from './hatch.tsx'
import { axis, onAxis } from '../../results/scale.ts'
import { useId } from '../parts/use-id.ts'

interface Props {
  value: number
  low: number
  high: number
  limit?: number | undefined
  /** The decimal mark; a point when left out. */
  mark?: string | undefined
  /** The drawing in words. */
  label: string
}

/** An interval on an axis in its own unit, with the limit as a mark and what lies beyond it hatched. */
export function IntervalDrawing({ value, low, high, limit, mark = '.', label }: Props) {
  const hatch = useId()
  const scale = axis(low, high, limit)
  const at = (x: number): string => `${(100 * onAxis(x, scale)).toFixed(2)}%`
  const end = scale.ticks.length - 1
  const inside = limit === undefined ? high : Math.min(high, limit)
  return (
    <svg class="big" role="img" aria-label={label}>
      <Hatch id={hatch} />
      {limit !== undefined && (
        <rect x={at(limit)} y="3" width={`${100 - 100 * onAxis(limit, scale)}%`} height="18" fill={`url(#${hatch})`} />
      )}
      <line class="rl" x1="0" x2="100%" y1="21.5" y2="21.5" />
      {scale.ticks.map((tick, i) => (
        <g key={tick}>
          <line class="rl" x1={at(tick)} x2={at(tick)} y1="21.5" y2="26" />
          <text x={at(tick)} y="37" text-anchor={i === 0 ? 'start' : i === end ? 'end' : 'middle'}>
            {tick.toFixed(scale.decimals).replace('.', mark)}
          </text>
        </g>
      ))}
      {low < inside && <line class="iv" x1={at(low)} x2={at(inside)} y1="12" y2="12" />}
      {limit !== undefined && high > limit && (
        <line class="ivx" x1={at(Math.max(low, limit))} x2={at(high)} y1="12" y2="12" />
      )}
      <line class="iv" x1={at(low)} x2={at(low)} y1="7" y2="17" />
      <line class="iv" x1={at(high)} x2={at(high)} y1="7" y2="17" />
      {limit !== undefined && <line class="lim" x1={at(limit)} x2={at(limit)} y1="0" y2="25" />}
      <circle class="dot" cx={at(value)} cy="12" r="4.5" />
    </svg>
  )
}
