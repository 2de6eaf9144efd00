/** What the Monte Carlo checks draw with: JCGM 101:2008, seeded. */
import { generator } from '../random.ts'

export interface Draws {
  uniform: () => number
  /** Box and Muller's transform. */
  normal: () => number
  /**
   * A standard deviation that readings gave with some degrees of freedom, drawn as JCGM 101, 6.4.9, has it: what is drawn
   * with it then has Student's t.
   */
  scatter(found: number, freedom: number): number
}

export function draws(seed: number): Draws {
  const uniform = generator(seed)
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  return {
    uniform,
    normal,
    scatter(found, freedom) {
      let squares = 0
      for (let at = 0; at < freedom; at++) squares += normal() ** 2
      return found / Math.sqrt(squares / freedom)
    },
  }
}

/** Baseline readings about two means, with their mean, the root of their pooled variance, and its degrees of freedom. */
export function zeroReadings(means: readonly [before: number, after: number], offsets: readonly number[]) {
  const centre = offsets.reduce((sum, offset) => sum + offset, 0) / offsets.length
  const squares = offsets.reduce((sum, offset) => sum + (offset - centre) ** 2, 0)
  const [before, after] = means.map((mean) => offsets.map((offset) => mean + offset - centre)) as [number[], number[]]
  return {
    baseline: { before, after },
    mean: (means[0] + means[1]) / 2,
    apart: means[1] - means[0],
    scatter: Math.sqrt(squares / (offsets.length - 1)),
    freedom: 2 * (offsets.length - 1),
    /** Standard uncertainty of the mean of both means, over the scatter of one reading. */
    meanShare: Math.sqrt(2 / offsets.length) / 2,
  }
}
