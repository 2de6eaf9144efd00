import { useRef } from 'preact/hooks'
import type { Mark } from '../../results/plot/plot.ts'

interface Props {
  marks: readonly Mark[]
  /** What each is called, with its values. */
  named: (mark: Mark) => string
  /** The row that is looked at. */
  chosen: number | undefined
  onChoose: (row: number) => void
  onPoint: (row: number | undefined) => void
}

/** Makes the readings of a plot reachable: one stop of the Tab key, the arrows go from reading to reading. */
export function PointTargets({ marks, named, chosen, onChoose, onPoint }: Props) {
  const group = useRef<SVGGElement>(null)
  const stop = marks.some(({ row }) => row === chosen) ? chosen : marks[0]?.row

  const onKeyDown = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
    const at = marks.findIndex(({ row }) => row === stop)
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      if (stop !== undefined) onChoose(stop)
    }
    const next = step && marks[at + step]
    if (!next) return
    event.preventDefault()
    onChoose(next.row)
    group.current?.querySelector<SVGGElement>(`[data-point="${next.row}"]`)?.focus()
  }

  return (
    <g ref={group} onKeyDown={onKeyDown}>
      {marks.map((mark) => (
        <g
          key={mark.row}
          class={mark.row === chosen ? 'hit chosen' : 'hit'}
          data-point={mark.row}
          role="button"
          tabindex={mark.row === stop ? 0 : -1}
          aria-label={named(mark)}
          aria-pressed={mark.row === chosen}
          onClick={() => onChoose(mark.row)}
          onPointerEnter={() => onPoint(mark.row)}
          onPointerLeave={() => onPoint(undefined)}
        >
          <circle cx={mark.at[0]} cy={mark.at[1]} r="13" class="reach" />
          <circle cx={mark.at[0]} cy={mark.at[1]} r="7" class="ring" />
        </g>
      ))}
    </g>
  )
}
