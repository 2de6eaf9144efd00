/** The leakage before and after the work as two bars, and what the work brought: where each mark stands. */
import type { Work } from '../../job/together.ts'
import { decimalsOf } from '../../reduce/figures/index.ts'
import { convert } from '../../units/convert.ts'
import { symbol } from '../../units/symbol.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'
import { halfUp, marginOf } from '../lines.ts'

/** Positions in a box of 400 by 92, downwards from its upper left corner. `left` is where bars begin beside short names. */
export const barsBox = { width: 400, height: 92, left: 62, right: 330, thick: 16, line: 12 } as const

/** Letters that a line of a name holds, lines that a name may have, and how wide a letter is at the size they are drawn. */
const [mostLetters, mostLines, letter] = [24, 2, 5.8]

/**
 * A name in lines that fit beside its bar; what does not fit ends in three dots.
 *
 * @example nameLines('before, both directions') // ['before, both directions']
 */
export function nameLines(name: string): string[] {
  const lines: string[] = []
  for (const word of name.split(/\s+/).flatMap((whole) => whole.match(new RegExp(`.{1,${mostLetters}}`, 'gu')) ?? [])) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word
    if (lines.length > 0 && longer.length <= mostLetters) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  if (lines.length <= mostLines) return lines
  return [...lines.slice(0, mostLines - 1), `${lines[mostLines - 1]!.slice(0, mostLetters - 1)}…`]
}

export interface Bar {
  name: string
  y: number
  to: number
  /** The 95 % interval, where there is one. */
  low: number | undefined
  high: number | undefined
  /** `754 cfm` */
  text: string
}

export interface Bars {
  title: string
  /** Where the bars begin, right of the names. */
  left: number
  bars: [before: Bar, after: Bar]
  /** `down 42.3 % ± 5.1 %` */
  change: string
  /** From the end of the bar after to the end of the bar before. */
  arrow: { from: number; to: number; y: number }
  words: string
}

/** `42.3 ± 5.1 %`, without the interval where there is none. */
function percentWords({ percent }: Work): string {
  const size = { ...percent, value: Math.abs(percent.value) }
  const margin = marginOf(percent, 1)
  const value = halfUp(size.value, 1)
  return margin === '' || margin.startsWith('−') ? `${value} %` : `${value} ± ${margin} %`
}

/** Nothing when there is no test before and after to compare. */
export function barsOf(work: Work | undefined): Bars | undefined {
  if (!work) return undefined
  const names = [roleWords(work.before), roleWords(work.after)]
  const widest = Math.max(...names.flatMap(nameLines).map(({ length }) => length))
  const left = Math.max(barsBox.left, 10 + letter * widest)
  const { right } = barsBox
  const { unit } = work.is
  const decimals = decimalsOf(work.figure, unit)
  const pair = ([work.was, work.is] as const).map((found) => {
    const to = (value: number | undefined) => (value === undefined ? undefined : convert(value, found.unit, unit))
    return { value: to(found.value)!, low: to(found.low), high: to(found.high) }
  })
  const most = Math.max(...pair.map(({ value, high }) => high ?? value))
  const x = (value: number) => left + (right - left) * (value / most)
  const [before, after] = pair.map(({ value, low, high }, at): Bar => {
    return {
      name: names[at]!,
      y: at === 0 ? 22 : 58,
      to: x(value),
      low: low === undefined ? undefined : x(low),
      high: high === undefined ? undefined : x(high),
      text: `${halfUp(value, decimals)} ${symbol(unit)}`,
    }
  }) as Bars['bars']
  const much = percentWords(work)
  const change = work.percent.value < 0 ? say`up ${much}` : say`down ${much}`
  return {
    title: work.of,
    left,
    bars: [before, after],
    change,
    arrow: { from: before.to, to: after.to, y: 50 },
    words: say`${work.of}: ${before.name} ${before.text}, ${after.name} ${after.text}, ${change} at 95 %.`,
  }
}
