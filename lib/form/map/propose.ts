/** Which suggestions stand once others are bound, and whether one of them leaves no doubt. */
import { say } from '../../words/say.ts'
import type { Suggestion } from './suggestion.ts'

export interface Proposed extends Suggestion {
  /** Whether it is good and clearly better than the next one. */
  clear: boolean
}

/** A suggestion that is this good, and better than the next one by the margin, is clear. */
export const good = 0.7
export const margin = 0.08

export const isClear = ([best, next]: readonly Suggestion[]): boolean =>
  best !== undefined && best.score >= good && best.score - (next?.score ?? 0) >= margin

/**
 * The suggestions for a control, best first, at most twelve. `taken`: items bound already, with the words for where
 * (`control 10`): they fall behind. At most one is `clear`.
 */
export function propose(
  suggestions: readonly Suggestion[],
  taken: ReadonlyMap<string, string> = new Map(),
): Proposed[] {
  const rated = suggestions
    .map((each) => {
      const at = taken.get(each.item)
      return at === undefined ? each : { ...each, score: each.score * 0.6, reason: say`bound to ${at} already` }
    })
    .filter(({ score }) => score >= 0.3)
    .toSorted((a, b) => b.score - a.score)
    .slice(0, 12)
  const clear = isClear(rated)
  return rated.map((each, at) => Object.assign({ clear: clear && at === 0 }, each))
}
