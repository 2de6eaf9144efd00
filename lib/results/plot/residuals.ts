/** How far each reading lies from the line, against the pressure of the plot above. */
import { say } from '../../words/say.ts'
import { axis, onAxis } from '../scale.ts'
import { halfUp, minus } from '../lines.ts'
import type { Mark, Place } from './plot.ts'

/** As wide as the plot, so that a reading stands under itself. */
export const residualBox = { height: 92, top: 10, bottom: 84 } as const

export interface Residuals {
  ticks: { y: number; text: string }[]
  zero: number
  marks: { at: Place; row: number; left: boolean }[]
  words: string
}

export function residualsOf(marks: readonly Mark[]): Residuals {
  const most = Math.max(1, ...marks.map(({ off }) => Math.abs(off)))
  const scale = axis(-most, most)
  const { top, bottom } = residualBox
  const y = (off: number) => bottom + (top - bottom) * onAxis(off, scale)
  const kept = marks.filter(({ left }) => !left)
  const furthest = kept.reduce<Mark | undefined>(
    (found, mark) => (found && Math.abs(found.off) >= Math.abs(mark.off) ? found : mark),
    undefined,
  )
  return {
    ticks: scale.ticks.map((tick) => ({ y: y(tick), text: minus(tick.toFixed(scale.decimals)) })),
    zero: y(0),
    marks: marks.map(({ at, off, row, left }) => ({ at: [at[0], y(off)], row, left })),
    words: furthest
      ? say`How far each point lies from the line, in percent. Point ${furthest.row + 1} lies furthest: ${minus(halfUp(furthest.off, 1))} %.`
      : '',
  }
}
