/** Checking a review file: every figure computed anew from the readings, every entry against the chain. */
import { material } from '../job/material.ts'
import { roleKeys } from '../job/roles.ts'
import { reduceTest } from '../job/reduce.ts'
import { textOf } from '../form/fill/text.ts'
import type { FigureValue } from '../reduce/report.ts'
import { seal } from './chain.ts'
import type { ReviewFile } from './review-file.ts'
import { isFill } from './rows.ts'
import { toldOf } from './review-told.ts'
import type { FillEntry, Finding } from './schema.ts'
import { say } from '../words/say.ts'

/** Two browsers may differ in the last digits of a power or logarithm. */
const sameTo = 1e-9

export type Compared = 'reproduced' | 'different' | 'only in the file' | 'only here'

export type FigureCompared = {
  test: string
  figure: string
  unit: string
  recorded?: FigureValue
  here?: FigureValue
  result: Compared
}
export type CheckCompared = { test: string; id: string; text: string; recorded: string; here: string; same: boolean }
/** `book`: name of the sender's book beside that the entry stands in; empty: the sender's own. */
export type TextCompared = {
  entry: number
  book: string
  control: string
  recorded: string
  here: string
  result: Compared
}
export type EntryChecked = { entry: number; book: string; fits: boolean; message: string }

export type ReviewResult = {
  figures: FigureCompared[]
  checks: CheckCompared[]
  texts: TextCompared[]
  entries: EntryChecked[]
  /** What does not fit, in words that can become findings. */
  told: Finding[]
  /** The newest fingerprint of the sender's chain; empty when the book had no entry. */
  head: string
}

/** Checks all of a review file. */
export async function checkReview(file: ReviewFile): Promise<ReviewResult> {
  const figures: FigureCompared[] = []
  const checks: CheckCompared[] = []
  for (const [test, key] of roleKeys(file.job.tests)) {
    const recorded = file.reports.find((one) => one.test === test.id)?.report
    const here = reduceTest(file.job, test, file.devices).report
    figures.push(...compareFigures(key, recorded?.figures ?? {}, here?.figures ?? {}))
    for (const found of here?.checks ?? []) {
      const before = recorded?.checks.find(({ id }) => id === found.id)?.outcome ?? 'not in the file'
      const { id, text, outcome } = found
      checks.push({ test: key, id, text, recorded: before, here: outcome, same: before === outcome })
    }
  }
  const parts = partsOf(file)
  return {
    figures,
    checks,
    texts: parts.flatMap(({ book, part }) =>
      part.entries.filter(isFill).flatMap((entry) => compareTexts(entry, file, book)),
    ),
    entries: (await Promise.all(parts.map(({ book, part }) => checkEntries(part, book)))).flat(),
    told: parts.flatMap(({ book, part }) =>
      book
        ? toldOf(part, []).map(({ about, weight, text }) => ({ about: `${book}: ${about}`, weight, text }))
        : toldOf(part, checks),
    ),
    head: file.proof.hashes.at(-1) ?? '',
  }
}

/** The sender's own book and each book beside it, as if each were the only one of the file. */
export const partsOf = (file: ReviewFile): { book: string; part: ReviewFile }[] => [
  { book: '', part: file },
  ...file.beside.map(({ name, entries, proof }) => ({ book: name, part: { ...file, entries, proof, beside: [] } })),
]

type Figures = Record<string, FigureValue>

function compareFigures(test: string, recorded: Figures, here: Figures): FigureCompared[] {
  const names = new Set([...Object.keys(recorded), ...Object.keys(here)])
  return [...names].flatMap((figure): FigureCompared[] => {
    const [a, b] = [recorded[figure], here[figure]]
    const unit = (a ?? b)?.unit ?? ''
    // Of ducts this is duct-flow-25 under another id, and bears its name: told once, unless it was changed in the file.
    if (figure === 'flow-25' && 'duct-flow-25' in here && a && b && same(a, b)) return []
    if (a && b) return [{ test, figure, unit, recorded: a, here: b, result: same(a, b) ? 'reproduced' : 'different' }]
    if (a) return [{ test, figure, unit, recorded: a, result: 'only in the file' }]
    return b ? [{ test, figure, unit, here: b, result: 'only here' }] : []
  })
}

function same(a: FigureValue, b: FigureValue): boolean {
  return a.unit === b.unit && close(a.value, b.value) && close(a.low, b.low) && close(a.high, b.high)
}

function close(a: number | undefined, b: number | undefined): boolean {
  if (a === undefined || b === undefined) return a === b
  return Math.abs(a - b) <= sameTo * Math.max(Math.abs(a), Math.abs(b))
}

/** The texts that were to be entered, written anew from the readings that the entry holds. */
function compareTexts(entry: FillEntry, file: ReviewFile, book: string): TextCompared[] {
  const map = file.maps.find(({ id, version }) => id === entry.map.id && version === entry.map.version)
  if (!entry.readings || !map || entry.kind === 'undo') return []
  const known = material(entry.readings, entry.basis?.devices ?? file.devices)
  return entry.planned.flatMap(({ binding, control, text }): TextCompared[] => {
    const bound = map.bindings.find(({ id }) => id === binding)
    if (!bound) return []
    const written = textOf(bound.source, known, bound.control)
    const here = 'text' in written ? written.text : ''
    const result = here === text ? 'reproduced' : 'different'
    return [{ entry: entry.number, book, control, recorded: text, here, result }]
  })
}

/** Each entry against its own hash, and its place against the hashes of the chain. */
async function checkEntries({ entries, proof }: ReviewFile, book: string): Promise<EntryChecked[]> {
  const hashAt = (number: number) => (number === proof.from - 1 ? proof.before : proof.hashes[number - proof.from])
  return Promise.all(
    entries.map(async (entry): Promise<EntryChecked> => {
      const said = (message: string) => ({ entry: entry.number, book, fits: message === '', message })
      if ((await seal(entry)) !== entry.hash) return said(say`is not what was written: its fingerprint does not fit.`)
      if (hashAt(entry.number) !== entry.hash) return said(say`does not stand in the chain at this place.`)
      if (hashAt(entry.number - 1) !== entry.previous) return said(say`does not follow the entry before it.`)
      return said('')
    }),
  )
}

/** Bands of a re-test in percent; common practice, no source. */
export const usualBands = { fine: '10', fault: '25' }

export type Band = 'fine' | 'to look at' | 'fault'

/**
 * How far a re-test lies from a recorded figure.
 *
 * @param recorded figure of the file, not zero
 * @param retest the same figure measured again, in the same unit
 * @param bands differences up to `fine` percent of the recorded figure are fine, those over `fault` percent a fault
 * @returns the difference in percent of the recorded figure, and its band
 * @throws RangeError when the recorded figure is zero, or the bands are not in order
 * @example
 * compareRetest(700, 742, { fine: 10, fault: 25 }) // { percent: 6, band: 'fine' }
 */
export function compareRetest(
  recorded: number,
  retest: number,
  { fine, fault }: { fine: number; fault: number },
): { percent: number; band: Band } {
  if (recorded === 0) throw new RangeError(say`The figure of the file is zero: nothing can be compared with it.`)
  if (!(fine >= 0 && fault >= fine)) throw new RangeError(say`The bands are not in order: type the smaller one first.`)
  const percent = (100 * (retest - recorded)) / Math.abs(recorded)
  const size = Math.abs(percent)
  return { percent, band: size <= fine ? 'fine' : size > fault ? 'fault' : 'to look at' }
}
