import { Hatch } from './hatch.tsx'
import { inLimits, type Span } from '../../results/scale.ts'
import { useId } from '../parts/use-id.ts'

const percent = (x: number): string => `${(100 * x).toFixed(1)}%`

/** An interval against its limit, drawn in units of the limit so that the limits of a table align. */
export function IntervalBar({ label, ...span }: Span & { label: string }) {
  const hatch = useId()
  const at = inLimits(span)
  const solidEnd = Math.min(at.high, at.limit)
  return (
    <svg class="bar" role="img" aria-label={label}>
      <Hatch id={hatch} />
      <rect x={percent(at.limit)} y="3" width={percent(1 - at.limit)} height="14" fill={`url(#${hatch})`} />
      <line class="ax" x1="0" x2={percent(at.limit)} y1="10" y2="10" />
      {at.low < at.limit && <line class="iv" x1={percent(at.low)} x2={percent(solidEnd)} y1="10" y2="10" />}
      {at.high > at.limit && (
        <line class="ivx" x1={percent(Math.max(at.low, at.limit))} x2={percent(at.high)} y1="10" y2="10" />
      )}
      <line class="iv" x1={percent(at.low)} x2={percent(at.low)} y1="6.5" y2="13.5" />
      {!at.beyond && <line class="iv" x1={percent(at.high)} x2={percent(at.high)} y1="6.5" y2="13.5" />}
      <line class="lim" x1={percent(at.limit)} x2={percent(at.limit)} y1="0" y2="20" />
      <circle class="dot" cx={percent(at.value)} cy="10" r="3.2" />
    </svg>
  )
}
