/** The report of an entry: made from what the entry holds, and from nothing else. */
import type { HeldFigure, HeldTest } from '../book/basis-schema.ts'
import type { FillEntry } from '../book/schema.ts'
import type { Device, Job, Test } from '../job/schema.ts'
import { devicesIn } from '../job/devices-in.ts'
import { reduceTest } from '../job/reduce.ts'
import { judge } from '../job/house-limit.ts'
import { decimalsOf, wordOf } from '../reduce/figures/index.ts'
import { symbol } from '../units/symbol.ts'
import { halfUp } from '../results/lines.ts'
import { asRead } from '../results/in-locale.ts'
import { say } from '../words/say.ts'
import { anchored, type Content } from './content.ts'
import { readPage } from './page-schema.ts'

const heldTest = ({ basis }: FillEntry, test: string): HeldTest | undefined =>
  basis?.tests.find((one) => one.test === test)

/** The report of a test as an entry holds it; nothing when it holds none, or in a form that is not known here. */
export function heldContent(entry: FillEntry, test: string): Content | undefined {
  const held = heldTest(entry, test)
  const page = held && readPage(entry.basis!.version, held.page)
  return page && { ...page, ...anchored({ number: entry.number, hash: entry.hash, same: true }) }
}

/** Two browsers may differ in the last digits of a power or logarithm. */
const sameTo = 1e-9

const differs = (a: number, b: number): boolean => Math.abs(a - b) > sameTo * Math.max(Math.abs(a), Math.abs(b))

/** Value and interval; the interval of an exact figure is the value. */
const ends = ({ value, low = value, high = value }: HeldFigure): number[] => [value, low, high]

type Figures = Readonly<Record<string, HeldFigure>>

/** The figures of both that are not the same, the one that the limit is set on first. */
function moved(held: Figures, now: Figures, first: string | undefined): string[] {
  const ids = Object.keys(held).filter((id) => {
    const [a, b] = [held[id], Object.hasOwn(now, id) ? now[id] : undefined]
    return a && (!b || a.unit !== b.unit || ends(a).some((value, at) => differs(value, ends(b)[at]!)))
  })
  return ids.toSorted((a, b) => Number(b === first) - Number(a === first))
}

function written(id: string, found: HeldFigure | undefined): string {
  if (!found) return say`no figure`
  const [value = '', low = '', high = ''] = ends(found).map((end) => asRead(halfUp(end, decimalsOf(id, found.unit))))
  const unit = symbol(found.unit)
  return found.low === undefined ? `${value} ${unit}`.trim() : `${value} ${unit} (${low}–${high})`.trim()
}

/** `ACH50: 3.11 1/h (2.80–3.42), where the entry holds 2.87 1/h (2.58–3.16); 4 more figures differ.` */
function movedWords(held: Figures, now: Figures, ids: readonly string[]): string {
  const [id = ''] = ids
  const name = wordOf(id, held[id]?.unit ?? '')
  const start = say`${name}: ${written(id, now[id])}, where the entry holds ${written(id, held[id])}`
  return ids.length > 1 ? say`${start}; ${ids.length - 1} more figures differ.` : `${start}.`
}

const outcomeOf = (job: Job, test: Test, figures: Parameters<typeof judge>[2]): string | undefined => {
  const { verdict, withheld } = judge(job, test, figures)
  if (withheld) return 'withheld'
  return verdict && (verdict.meets ? 'meets' : 'does not meet')
}

/**
 * What would come out otherwise if the report were made today: with the engine as it is, with the devices as they stand,
 * against the limit as it is known here. The report stays as the entry holds it.
 */
export function sinceThen(entry: FillEntry, test: string, devices: readonly Device[]): string[] {
  const held = heldTest(entry, test)
  const job = entry.readings
  const typed = job?.tests.find(({ id }) => id === test)
  if (!entry.basis || !held || !job || !typed) return []
  const told: string[] = []
  const first = held.limit?.figure
  const then = figuresWith(job, typed, entry.basis.devices)
  const byEngine = moved(held.figures, then, first)
  if (byEngine.length > 0)
    told.push(say`The engine of this version would give another number. ${movedWords(held.figures, then, byEngine)}`)
  const named = devicesIn(typed.sheet)
  const mine = devices.filter(({ id }) => named.includes(id))
  const now = mine.length > 0 ? figuresWith(job, typed, devices) : then
  const byDevice = moved(then, now, first)
  if (byDevice.length > 0)
    told.push(
      say`${mine.map(({ name }) => name).join(', ')} was changed since: as it stands now it would give another number. ${movedWords(held.figures, now, byDevice)}`,
    )
  const verdict = outcomeOf(job, typed, now)
  if (held.verdict && verdict !== undefined && verdict !== held.verdict.outcome)
    told.push(
      verdict === 'withheld'
        ? say`Today there would be no verdict: the limit is not for this test. The entry holds another one.`
        : verdict === 'meets'
          ? say`Today’s verdict would be: meets the limit. The entry holds another one.`
          : say`Today’s verdict would be: does not meet the limit. The entry holds another one.`,
    )
  return told
}

const figuresWith = (job: Job, test: Test, devices: readonly Device[]) =>
  reduceTest(job, test, [...devices]).report?.figures ?? {}
