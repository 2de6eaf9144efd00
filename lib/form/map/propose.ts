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

const fieldOf = (item: string): string => item.slice(item.lastIndexOf('/') + 1)
const groupOf = (item: string): string => item.slice(0, Math.max(0, item.lastIndexOf('/')))
/** Of two tests that fit this equally the page does not say which is meant. */
const even = 0.02

/** The best suggestions that differ in nothing but their test. */
function tiesOf(suggestions: readonly Suggestion[]): Suggestion[] {
  const best = suggestions.reduce(
    (most: Suggestion | undefined, each) => (each.score > (most?.score ?? 0) ? each : most),
    undefined,
  )
  if (!best || best.score < good) return []
  const ties = suggestions.filter(
    ({ item, score }) => fieldOf(item) === fieldOf(best.item) && best.score - score <= even && groupOf(item) !== '',
  )
  return ties.length > 1 ? ties : []
}

/**
 * The tests of which a page may be, as far as it does not say of which: the part before `/` in the keys of the items,
 * the one that fits most controls first. One answer serves the whole page.
 */
export function testsInDoubt(all: readonly (readonly Suggestion[])[]): string[] {
  const counts = new Map<string, number>()
  for (const suggestions of all)
    for (const { item } of tiesOf(suggestions)) counts.set(groupOf(item), (counts.get(groupOf(item)) ?? 0) + 1)
  return [...counts].toSorted(([, a], [, b]) => b - a).map(([group]) => group)
}

/** The suggestions once the person has said of which test the page is: where it does not say otherwise itself. */
function ofTest(suggestions: readonly Suggestion[], test: string): readonly Suggestion[] {
  const ties = tiesOf(suggestions)
  const mine = ties.find(({ item }) => groupOf(item) === test)
  if (!mine) return suggestions
  return suggestions.map((each) =>
    each !== mine && ties.includes(each) ? Object.assign({}, each, { score: mine.score - margin - even }) : each,
  )
}

/**
 * The suggestions for a control, best first, at most twelve. `taken`: items bound already, with the words for where
 * (`control 10`): they fall behind. `test`: of which the page is, as the person says. At most one is `clear`.
 */
export function propose(
  suggestions: readonly Suggestion[],
  taken: ReadonlyMap<string, string> = new Map(),
  test = '',
): Proposed[] {
  const rated = ofTest(suggestions, test)
    .map((each) => {
      const at = taken.get(each.item)
      return at === undefined
        ? each
        : Object.assign({}, each, { score: each.score * 0.6, reason: say`bound to ${at} already` })
    })
    .filter(({ score }) => score >= 0.3)
    .toSorted((a, b) => b.score - a.score)
    .slice(0, 12)
  const clear = isClear(rated)
  return rated.map((each, at) => Object.assign({ clear: clear && at === 0 }, each))
}
