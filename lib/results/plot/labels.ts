/** Where the words in a plot stand: over no reading, and not over one another. */
import { box, type Plot } from './plot.ts'

export interface WordsPlace {
  x: number
  y: number
  'text-anchor': 'start' | 'end'
}

interface Area {
  left: number
  right: number
  top: number
  bottom: number
}

/** Narrow views draw words larger beside the rest: 14 of the box's units high, 7.6 for a letter. */
const size = { letter: 7.6, above: 11, below: 4 }

const areaOf = ({ x, y, 'text-anchor': anchor }: WordsPlace, text: string): Area => {
  const wide = text.length * size.letter
  const left = anchor === 'end' ? x - wide : x
  return { left, right: left + wide, top: y - size.above, bottom: y + size.below }
}

const around = ([x, y]: readonly [number, number], reach: number): Area => ({
  left: x - reach,
  right: x + reach,
  top: y - reach,
  bottom: y + reach,
})

const shared = (one: Area, other: Area): number =>
  Math.max(0, Math.min(one.right, other.right) - Math.max(one.left, other.left)) *
  Math.max(0, Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top))

/** How much of a text would lie outside the box. */
const beyond = ({ left, right, top, bottom }: Area): number =>
  Math.max(0, box.left - left) +
  Math.max(0, right - box.width) +
  Math.max(0, box.top - top) +
  Math.max(0, bottom - box.bottom)

/** The first place whose text covers nothing; the one that covers least where each covers something. */
function freest(text: string, places: readonly WordsPlace[], taken: readonly Area[]): WordsPlace {
  const cost = (place: WordsPlace) => {
    const area = areaOf(place, text)
    return 100 * beyond(area) + taken.reduce((sum, one) => sum + shared(area, one), 0)
  }
  return places.reduce((best, place) => (cost(place) < cost(best) ? place : best))
}

/** What stands in the plot before its words: the readings, the result, and the equation in the corner. */
function covered({ marks, result, equation }: Plot): Area[] {
  const equationWide = Math.max(equation.detail.length * 6, 150)
  return [
    ...marks.map(({ at }) => around(at, 5)),
    ...(result
      ? [
          around(result.at, 5),
          { left: result.at[0] - 5, right: result.at[0] + 5, top: result.high, bottom: result.low },
        ]
      : []),
    { left: box.left, right: box.left + 10 + equationWide, top: box.top, bottom: box.top + 38 },
  ]
}

const start = (x: number, y: number): WordsPlace => ({ x, y, 'text-anchor': 'start' })
const end = (x: number, y: number): WordsPlace => ({ x, y, 'text-anchor': 'end' })

/** Beside the limit's line: left of it, above or below it, or at the edge. */
export function limitPlace(plot: Plot): WordsPlace {
  const { limit } = plot
  if (!limit) return start(box.left + 4, box.top + 46)
  const [x, y] = limit.at
  const { half, text } = limit
  const rows = [3.5, -12, 18, -26, 32].map((step) => Math.min(Math.max(y + step, box.top + 46), box.bottom - 6))
  const sides = rows.flatMap((row) => [end(x - half - 5, row), start(box.left + 4, row), end(box.right - 2, row)])
  return freest(text, sides, [...covered(plot), { left: x - half, right: x + half, top: y - 9, bottom: y + 2 }])
}

/** Right of the result and below the curve, or where else its words cover nothing. */
export function resultPlace(plot: Plot): WordsPlace {
  const { result, limit } = plot
  const [x, y] = result?.at ?? [0, 0]
  const low = Math.min(Math.max(y + 14, (result?.low ?? y) + 11), box.bottom - 6)
  const high = Math.max(Math.min(y - 8, (result?.high ?? y) - 6), box.top + 12)
  const rows = [low, low + 16, low + 32, high, high - 16, box.bottom - 6].map((row) =>
    Math.min(Math.max(row, box.top + 12), box.bottom - 6),
  )
  const sides = rows.flatMap((row) => [start(x + 8, row), end(box.right - 2, row), end(x - 8, row)])
  return freest(result?.text ?? '', sides, [
    ...covered(plot),
    ...(limit
      ? [
          areaOf(limitPlace(plot), limit.text),
          {
            left: limit.at[0] - limit.half,
            right: limit.at[0] + limit.half,
            top: limit.at[1] - 9,
            bottom: limit.at[1] + 2,
          },
        ]
      : []),
  ])
}
