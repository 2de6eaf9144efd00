/** The person's own figures: those pinned, in their order and with their decimals, before all others. */
import { say } from '../words/say.ts'
import type { FigureGroup } from './shown.ts'
import { halfUp, marginOf } from './lines.ts'

export interface OwnFigure {
  id: string
  /** The usual ones when left out. */
  decimals?: number | undefined
}

/** The groups with the own figures in one of their own at the top; each figure still stands once. */
export function ownFirst(groups: readonly FigureGroup[], own: readonly OwnFigure[]): readonly FigureGroup[] {
  if (own.length === 0) return groups
  const lines = new Map(groups.flatMap((group) => group.lines).map((line) => [line.id, line]))
  const first = own.flatMap(({ id, decimals }) => {
    const line = lines.get(id)
    if (!line) return []
    if (decimals === undefined || !line.found) return [line]
    return [{ ...line, value: halfUp(line.found.value, decimals), margin: marginOf(line.found, decimals) }]
  })
  if (first.length === 0) return groups
  const taken = new Set(first.map(({ id }) => id))
  const others = groups.flatMap(({ title, lines: all }) => {
    const left = all.filter(({ id }) => !taken.has(id))
    return left.length > 0 ? [{ title, lines: left }] : []
  })
  return [{ title: say`own figures`, lines: first }, ...others]
}

/** Pins a figure after those that are pinned, or takes its pin away. */
export const togglePin = (own: readonly OwnFigure[], id: string): OwnFigure[] =>
  own.some((one) => one.id === id) ? own.filter((one) => one.id !== id) : [...own, { id }]

/** Moves a pinned figure up (-1) or down (1) among those in `shown`; what is not shown keeps its place. */
export function movePin(own: readonly OwnFigure[], id: string, by: -1 | 1, shown: ReadonlySet<string>): OwnFigure[] {
  const visible = own.filter((one) => shown.has(one.id))
  const at = visible.findIndex((one) => one.id === id)
  const other = visible[at + by]
  if (at < 0 || !other) return [...own]
  const [from, to] = [own.findIndex((one) => one.id === id), own.indexOf(other)]
  return own.with(from, other).with(to, visible[at]!)
}

/** Sets the decimals of a pinned figure; undefined: the usual ones. */
export const setDecimals = (own: readonly OwnFigure[], id: string, decimals: number | undefined): OwnFigure[] =>
  own.map((one) => (one.id !== id ? one : decimals === undefined ? { id } : { id, decimals }))
