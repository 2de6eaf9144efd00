/** What R says of the whole uncertainty of a sheet, and where the engine's report differs from it. */
import type { Report } from '../../../lib/engine/index.ts'

/**
 * Value and 95 % limits; relative standard uncertainty; effective degrees of freedom, 0 where there are so many that the
 * coverage factor is 2; shares of the variance, 0 for a part that has none.
 */
export interface Whole {
  limits: [value: number, low: number, high: number]
  u: number
  freedom: number
  shares: Record<string, number>
}

export const TOLERANCE = 1e-6

/** Distances above {@link TOLERANCE}: of limits relative to the value, of shares of all of the variance. */
export function wholeMisses({ figures }: Report, expected: Record<string, Whole>): string[] {
  return Object.entries(expected).flatMap(([id, { limits, u, freedom, shares }]) => {
    const { value = NaN, low = NaN, high = NaN, budget = [], freedom: own = 0 } = figures[id] ?? {}
    const parts = new Map(budget.map(({ part, share }) => [part, share]))
    const pairs: [what: string, found: number, want: number, size: number][] = [
      ['value', value, limits[0], limits[0]],
      ['low', low, limits[1], limits[0]],
      ['high', high, limits[2], Math.max(limits[0], limits[2])],
      ['freedom', own, freedom, 1],
      ['u', Math.hypot(...budget.map((part) => part.u)), u, u],
      ...Object.entries(shares).map(([part, share]): (typeof pairs)[number] => [part, parts.get(part) ?? 0, share, 1]),
      ['parts unknown to R', budget.filter(({ part }) => !(part in shares)).length, 0, 1],
    ]
    return pairs
      .filter(([, found, want, size]) => !(Math.abs(found - want) < TOLERANCE * size))
      .map(([what, found, want]) => `${id} ${what}: ${found}, R ${want}`)
  })
}
