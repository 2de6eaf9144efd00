/** Suggestions for all controls of a page together: rows that look alike take the systems of a job one after another. */
import type { Item, Material } from '../material.ts'
import { good, isClear, margin } from './propose.ts'
import type { Clues } from '../schema.ts'
import { suggest } from './suggest.ts'
import type { Suggestion } from './suggestion.ts'
import { plain } from '../words.ts'
import { say } from '../../words/say.ts'

/** Groups of items of which a job may have several, by number: `duct system 2`. */
const numbered = /^(.*\D)(\d+)$/
/** A row for what has no row of its own (common practice, no source). */
const remainder = /\b(the )?(rest|remaining|remainder|(all )?others?|all other systems)\b/
/** Items that add up all systems from one on. */
const fromOn = /^.* from (\d+)$/

/** What rows have in common: their name without the number or letter that counts them, and their heading. */
function rowOf({ name, section }: Clues): string {
  return `${plain(name)
    .replace(/(^| )(\d+|[a-h])$/, '')
    .trim()} | ${plain(section)}`
}

/** The items among the best ones that differ in nothing but the number of their group, in its order. */
function seriesIn(suggestions: readonly Suggestion[], { items }: Material): Suggestion[] {
  const [best] = suggestions
  const [, stem] = numbered.exec(items[best?.item ?? '']?.group ?? '') ?? []
  if (!best || stem === undefined) return []
  const field = best.item.slice(best.item.lastIndexOf('/'))
  const numberOf = ({ item }: Suggestion) => {
    const [, other, number] = numbered.exec(items[item]?.group ?? '') ?? []
    return other === stem && item.endsWith(field) ? Number(number) : 0
  }
  return suggestions
    .filter((each) => numberOf(each) > 0 && best.score - each.score < margin)
    .toSorted((a, b) => numberOf(a) - numberOf(b))
}

/** Puts one suggestion clearly before the others. */
function first(suggestion: Suggestion, reason: string, others: readonly Suggestion[]): Suggestion[] {
  const score = Math.min(1, Math.max(good, suggestion.score))
  const below = score - margin - 0.01
  const rest = others.filter(({ item }) => item !== suggestion.item)
  const behind = rest.map((each) => Object.assign({}, each, { score: Math.min(each.score, below) }))
  return [{ ...suggestion, score, reason }, ...behind]
}

const isSum = ({ group }: Item): boolean => fromOn.test(group)

/** In a table the rows may only be counted, and the column says what is asked for. */
function byColumn(clues: Clues, material: Material): Suggestion[] {
  return suggest({ ...clues, name: clues.section, section: '' }, material)
}

/** The suggestions of each control, in the same order. */
export function suggestAll(controls: readonly Clues[], material: Material): Suggestion[][] {
  const work = suggesting(controls, material)
  for (;;) {
    const { done, value } = work.next()
    if (done) return value
  }
}

/** The same bit by bit, a pause after each control: a page may have thousands, and others wait. */
export function* suggesting(controls: readonly Clues[], material: Material): Generator<void, Suggestion[][]> {
  const rows = Map.groupBy(controls.keys(), (at) => rowOf(controls[at] as Clues))
  const entries = Object.entries(material.items)
  const single = { ...material, items: Object.fromEntries(entries.filter(([, item]) => !isSum(item))) }
  const sums = { ...material, items: Object.fromEntries(entries.filter(([, item]) => isSum(item))) }
  const all: Suggestion[][] = []
  for (const clues of controls) {
    all.push(suggest(clues, single))
    yield
  }
  const places = new Map([...rows.values()].flatMap((row) => row.map((at, place) => [at, place] as const)))
  const seen = new Map<string, number>()
  for (const [at, clues] of controls.entries()) {
    yield
    const under = plain(clues.section)
    const above = seen.get(under) ?? 0
    seen.set(under, above + 1)
    const row = rows.get(rowOf(clues)) ?? []
    const own = all[at] ?? []
    if (isClear(own)) continue
    if (remainder.test(plain(clues.name))) {
      const sum = byColumn(clues, sums).find(
        ({ item }) => fromOn.exec(material.items[item]?.group ?? '')?.[1] === `${above + 1}`,
      )
      if (sum && above > 0 && sum.score >= 0.5)
        all[at] = first(sum, say`the sum of all systems after the ${above} above`, own)
      continue
    }
    if (row.length < 2) continue
    const asked = own.length > 0 ? own : byColumn(clues, single)
    const series = seriesIn(asked, single)
    if (series.length < 2) continue
    const place = places.get(at) ?? 0
    const mine = series[place]
    all[at] = mine
      ? first(mine, say`row ${place + 1} of ${row.length} that look alike`, asked)
      : asked.filter((each) => !series.includes(each))
  }
  return all
}
