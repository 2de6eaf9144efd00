import { say } from '../../words/say.ts'
import { box } from '../../results/plot/plot.ts'
import { zeroFlowBox, type ZeroFlow } from '../../results/plot/zero-flow.ts'

/** The baseline on an axis of its own, for it is far too small for the plot. */
export function ZeroFlowDrawing({ zero }: { zero: ZeroFlow }) {
  const { left, right, width } = box
  const { height, line } = zeroFlowBox
  return (
    <svg class="plot under" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={zero.words}>
      <path class="fr" d={`M${left} ${line}H${right}`} />
      {zero.ticks.map(({ x, text }) => (
        <g key={text}>
          <path class="fr" d={`M${x} ${line}v4`} />
          <text x={x} y={line + 16} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      {zero.marks.map(({ x, after, key }) => (
        <circle key={key} class={after ? 'dot' : 'pt'} cx={x} cy={line - 8} r="3.4" />
      ))}
      <path class="lim" d={`M${zero.mean} ${line - 16}v16`} />
      <text x={left} y={line - 27}>
        {say`Baseline, Pa: ○ before, ● after, | mean`}
      </text>
    </svg>
  )
}
