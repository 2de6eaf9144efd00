/** Where the readings at zero flow stand, before and after, and their mean, which every reading is corrected by. */
import { say } from '../../words/say.ts'
import { baselineOf } from '../../reduce/baseline.ts'
import type { Sheet } from '../../sheet/schema.ts'
import { halfUp, minus } from '../lines.ts'
import { axis, onAxis } from '../scale.ts'
import { box } from './plot.ts'

export const zeroFlowBox = { height: 66, line: 44 } as const

export interface ZeroFlow {
  ticks: { x: number; text: string }[]
  marks: { x: number; after: boolean; key: string }[]
  mean: number
  words: string
}

const written = (list: readonly number[]) => list.map((pressure) => minus(halfUp(pressure, 1))).join(', ') || say`none`

/** Nothing when no baseline was read. */
export function zeroFlowOf({ baseline }: Pick<Sheet, 'baseline'>): ZeroFlow | undefined {
  const { before, after } = baseline
  const all = [...before, ...after]
  if (all.length === 0) return undefined
  const { mean } = baselineOf(baseline)
  const scale = axis(Math.min(0, ...all), Math.max(0, ...all))
  const x = (pressure: number) => box.left + (box.right - box.left) * onAxis(pressure, scale)
  const marks = [
    ...before.map((pressure, at) => ({ x: x(pressure), after: false, key: `before ${at}` })),
    ...after.map((pressure, at) => ({ x: x(pressure), after: true, key: `after ${at}` })),
  ]
  return {
    ticks: scale.ticks.map((tick) => ({ x: x(tick), text: minus(tick.toFixed(scale.decimals)) })),
    marks,
    mean: x(mean),
    words: say`Baseline in Pa: before ${written(before)}, after ${written(after)}, mean ${minus(halfUp(mean, 1))}.`,
  }
}
