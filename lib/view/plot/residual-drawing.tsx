import { say } from '../../words/say.ts'
import { cross } from '../../results/plot/cross.ts'
import { box } from '../../results/plot/plot.ts'
import { residualBox, type Residuals } from '../../results/plot/residuals.ts'

/** The residuals under the plot. */
export function ResidualDrawing({ residuals, chosen }: { residuals: Residuals; chosen?: number | undefined }) {
  const { left, right, width } = box
  const { height, top, bottom } = residualBox
  return (
    <svg class="plot under" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={residuals.words}>
      {residuals.ticks.map(({ y, text }) => (
        <g key={text}>
          <path class="g" d={`M${left} ${y}H${right}`} />
          <text x={left - 6} y={y + 3.5} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <path class="ln" d={`M${left} ${residuals.zero}H${right}`} />
      {residuals.marks.map(({ at: [x, y], row, left: gone }) => (
        <g key={row} class={row === chosen ? 'chosen' : ''}>
          {!gone && <path class="stem" d={`M${x} ${residuals.zero}V${y}`} />}
          {gone ? <path class="pt gone" d={cross(x, y)} /> : <circle class="pt" cx={x} cy={y} r="3" />}
        </g>
      ))}
      <path class="fr" d={`M${left} ${top}V${bottom}`} />
      <text class="side" transform={`translate(12 ${(top + bottom) / 2}) rotate(-90)`} text-anchor="middle">
        {say`off line, %`}
      </text>
    </svg>
  )
}
