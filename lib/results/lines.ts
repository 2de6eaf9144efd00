/** Writes a report for reading: rounds, names and sorts, and computes nothing. */
import type { Limit } from '../limits/index.ts'
import { partWords } from '../reduce/budget.ts'
import { decimalsOf, figureById, figures, labelOf, wordOf } from '../reduce/figures/index.ts'
import type { Need } from '../reduce/figures/figure.ts'
import type { FigureValue, Report } from '../reduce/report.ts'
import type { Sheet } from '../sheet/schema.ts'
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import type { FigureGroup, FigureLine } from './shown.ts'
import { say, shown } from '../words/say.ts'

/** Minus as a typographer sets it, for reading only: what is copied keeps the hyphen. */
export const minus = (text: string): string => text.replace(/^-/, '−')

export const halfUp = (value: number, decimals: number): string => write(value, { decimals, rounding: 'half-up' })

/** The interval beside a written value: `0.17`, or `−61 +68` when the two sides differ as written. Empty without one. */
export function marginOf({ value, low, high }: FigureValue, decimals: number): string {
  if (low === undefined || high === undefined) return ''
  const below = halfUp(value - low, decimals)
  const above = halfUp(high - value, decimals)
  return below === above ? above : `−${below} +${above}`
}

/** `2.69 to 3.03` */
export function rangeOf({ low, high }: FigureValue, decimals: number): string {
  return low === undefined || high === undefined
    ? ''
    : say`${minus(halfUp(low, decimals))} to ${minus(halfUp(high, decimals))}`
}

/**
 * Which part of the uncertainty is the largest: `mostly the flow device`; two of them where none makes up one half.
 * Empty without a budget.
 */
export function mostlyOf({ budget = [] }: FigureValue): string {
  const [first, second] = budget
  if (first === undefined) return ''
  if (first.share >= 0.5 || second === undefined) return say`Uncertainty: mostly ${partWords(first.part)}.`
  return say`Uncertainty: mostly ${partWords(first.part)} and ${partWords(second.part)}.`
}

/** A label in the word of the trade and what tells it from others: `CFM50`, `as read`. */
function named(id: string, unit: string): { name: string; detail: string } {
  if (/^\S+ (?:as|of|per) /.test(labelOf(id, unit))) {
    const [name = '', ...detail] = wordOf(id, unit).split(' ')
    return { name, detail: detail.join(' ') }
  }
  const [, ...rest] = (figureById(id)?.name ?? '').split(', ')
  return { name: wordOf(id, unit), detail: rest.join(', ') }
}

export function figureLine(id: string, found: FigureValue, report: Pick<Report, 'working'>, limit?: Limit): FigureLine {
  const decimals = decimalsOf(id, found.unit)
  const { value, low, high } = found
  const interval = rangeOf(found, decimals)
  const compared = limit?.figure === id && limit.unit === found.unit && low !== undefined && high !== undefined
  return {
    id,
    ...named(id, found.unit),
    found,
    value: halfUp(value, decimals),
    margin: marginOf(found, decimals),
    interval:
      interval && (compared ? say`95 % interval ${interval}, limit ${limit.value}` : say`95 % interval ${interval}`),
    unit: symbol(found.unit),
    note: found.note ?? '',
    budget: found.budget ?? [],
    steps: report.working.filter((step) => step.for.includes(id)),
    ...(compared && { span: { value, low, high, limit: limit.value } }),
  }
}

/** The figures of a report under their headings, in the order the registry lists them. */
export function figureGroups(report: Report, limit?: Limit): FigureGroup[] {
  const groups = new Map<string, FigureLine[]>()
  const ducts = 'duct-flow-25' in report.figures
  for (const figure of figures) {
    const { id } = figure
    const found = report.figures[id]
    // Of ducts this is duct-flow-25 under another id: one number is shown once.
    if (!found || (ducts && id === 'flow-25')) continue
    // What forms ask of a house is one more flow of ducts.
    const group = ducts && figure.group === 'what forms ask' ? 'flows at other pressures' : figure.group
    const lines = groups.get(group) ?? []
    lines.push(figureLine(id, found, report, limit))
    groups.set(group, lines)
  }
  return [...groups].map(([title, lines]) => ({ title: shown(title), lines }))
}

const needWords: Record<Need, string> = {
  volume: say`the volume`,
  floorArea: say`the floor area`,
  enclosureArea: say`the enclosure area`,
  enclosureAreaWithoutFloor: say`the enclosure area without the lowest floor`,
  height: say`the height`,
  bedrooms: say`the bedrooms`,
  weatherShieldingFactor: say`the weather and shielding factor`,
  airHandlerFlow: say`the air-handler flow`,
  fit: say`a procedure with five points or more`,
}

function has(sheet: Sheet, report: Report, need: Need): boolean {
  if (need === 'fit') return report.fit !== undefined
  if (need === 'weatherShieldingFactor') return sheet.weatherShieldingFactor !== undefined
  if (need === 'airHandlerFlow') return sheet.duct?.airHandlerFlow !== undefined
  return sheet.building?.[need] !== undefined
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : say`${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`

/**
 * What the figures that are not there want: `ACH50 needs the volume`. Figures with the same want share a line. `wanted`
 * leaves out figures that nobody misses.
 */
export function lacking(sheet: Sheet, report: Report, wanted: (id: string) => boolean = () => true): string[] {
  const wants = new Map<string, string[]>()
  for (const figure of figures) {
    if (report.figures[figure.id] || !wanted(figure.id) || (figure.subject && figure.subject !== sheet.subject))
      continue
    const needs = figure.needs.filter((need) => !has(sheet, report, need)).map((need) => needWords[need])
    if (needs.length === 0) continue
    const want = listed(needs)
    const flowUnit = Object.keys(figure.labels ?? {}).find((unit) => unit.startsWith(sheet.units.flow))
    wants.set(want, [...(wants.get(want) ?? []), wordOf(figure.id, flowUnit ?? '')])
  }
  return [...wants].map(([want, names]) => {
    const who = listed([...new Set(names)].map((name) => (name.includes(',') ? say`“${name}”` : name)))
    const line = names.length > 1 ? say`${who} need ${want}.` : say`${who} needs ${want}.`
    // A word begins with a capital, a symbol such as n or r² stays.
    return /^\p{Ll}{2}/u.test(line) ? line.charAt(0).toUpperCase() + line.slice(1) : line
  })
}
