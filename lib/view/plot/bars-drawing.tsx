import { barsBox, nameLines, type Bars } from '../../results/plot/bars.ts'

/** Before and after as two bars from zero, with their intervals and what the work brought. */
export function BarsDrawing({ bars: { bars, left, change, arrow, words } }: { bars: Bars }) {
  const { width, height, thick, line } = barsBox
  return (
    <svg class="plot bars" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
      {bars.map(({ name, y, to, low, high, text }, at) => (
        <g key={name}>
          {nameLines(name).map((part, row, { length }) => (
            <text key={part} x={left - 6} y={y + 4 + line * (row - (length - 1) / 2)} text-anchor="end">
              {part}
            </text>
          ))}
          <rect class={at === 0 ? 'was' : 'is'} x={left} y={y - thick / 2} width={to - left} height={thick} />
          {low !== undefined && high !== undefined && (
            <path class="iv" d={`M${low} ${y}H${high}M${low} ${y - 4}v8M${high} ${y - 4}v8`} />
          )}
          <text class="k" x={(high ?? to) + 7} y={y + 4}>
            {text}
          </text>
        </g>
      ))}
      <path class="fr" d={`M${left} 8V72`} />
      {Math.abs(arrow.from - arrow.to) > 8 && (
        <path
          class="way"
          d={`M${arrow.from} 32V${arrow.y - 9}M${arrow.from} 41H${arrow.to}l${arrow.from > arrow.to ? 5 : -5} -3.5m0 7l${arrow.from > arrow.to ? -5 : 5} -3.5`}
        />
      )}
      <text class="k" x={left} y={height - 6}>
        {change}
      </text>
    </svg>
  )
}
