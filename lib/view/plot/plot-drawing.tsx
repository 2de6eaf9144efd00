import type { ComponentChildren } from 'preact'
import { Hatch } from '../figure/hatch.tsx'
import { cross } from '../../results/plot/cross.ts'
import { limitPlace, resultPlace } from '../../results/plot/labels.ts'
import { box, type Place, type Plot } from '../../results/plot/plot.ts'
import { useId } from '../parts/use-id.ts'

const path = (places: readonly Place[]): string =>
  places.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')

/** Room above the box, for what the flow axis is: written along the axis it would lie over the ticks of a small drawing. */
const over = 10

/** The plot of a test on a page. */
export function PlotDrawing({ plot, children }: { plot: Plot; children?: ComponentChildren }) {
  const hatch = useId()
  const clip = useId()
  const { left, right, top, bottom, width, height } = box
  const { result, limit, equation } = plot
  return (
    <svg
      class="plot"
      viewBox={`0 ${-over} ${width} ${height + over}`}
      role={children ? 'group' : 'img'}
      aria-label={plot.words}
    >
      <Hatch id={hatch} />
      <clipPath id={clip}>
        <rect x={left} y={top} width={right - left} height={bottom - top} />
      </clipPath>
      {plot.verticals.map(({ x, text }) => (
        <g key={text}>
          <path class="g" d={`M${x} ${top}V${bottom}`} />
          <text x={x} y={bottom + 14} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      {plot.horizontals.map(({ y, text }) => (
        <g key={text}>
          <path class="g" d={`M${left} ${y}H${right}`} />
          <text x={left - 6} y={y + 3.5} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <g clip-path={`url(#${clip})`}>
        <path class="band" d={`${path(plot.band)}Z`} />
        <path class="ln" d={path(plot.line)} />
        {plot.other && <path class="ln other" d={path(plot.other)} />}
        {limit && (
          <rect
            x={limit.at[0] - limit.half}
            y={limit.at[1] - 9}
            width={2 * limit.half}
            height="9"
            fill={`url(#${hatch})`}
          />
        )}
      </g>
      {limit && <path class="lim" d={`M${limit.at[0] - limit.half} ${limit.at[1]}h${2 * limit.half}`} />}
      {plot.marks.map(
        ({ at: [x, y], row, left: gone }) => !gone && <circle key={row} class="pt" cx={x} cy={y} r="3.4" />,
      )}
      {result && (
        <>
          <path
            class="iv"
            d={`M${result.at[0]} ${result.low}V${result.high}M${result.at[0] - 4} ${result.low}h8M${result.at[0] - 4} ${result.high}h8`}
          />
          <circle class="dot" cx={result.at[0]} cy={result.at[1]} r="3.6" />
          <text class="k" {...resultPlace(plot)}>
            {result.text}
          </text>
        </>
      )}
      {plot.marks.map(({ at: [x, y], row, left: gone }) => gone && <path key={row} class="pt gone" d={cross(x, y)} />)}
      {limit && (
        <text class="k" {...limitPlace(plot)}>
          {limit.text}
        </text>
      )}
      <path class="fr" d={`M${left} ${top}V${bottom}H${right}`} />
      <text x={(left + right) / 2} y={height - 3} text-anchor="middle">
        {plot.pressureName} <tspan class="v">ΔP</tspan>, Pa
      </text>
      <text x="2" y={top - 9}>
        {plot.flowName}
      </text>
      <text class="eq" x={left + 10} y={top + 18}>
        <tspan class="v">Q</tspan> = {equation.coefficient} Δ<tspan class="v">P</tspan>
        <tspan dy="-5" class="up">
          {equation.exponent}
        </tspan>
      </text>
      <text class="eq2" x={left + 10} y={top + 33}>
        {equation.detail}
      </text>
      {children}
    </svg>
  )
}
