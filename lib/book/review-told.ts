/** What a reviewer must be told of a review file, each in words that can become a finding. */
import { reduceTest } from '../job/reduce.ts'
import { roleKeys } from '../job/roles.ts'
import type { Device, Job } from '../job/schema.ts'
import { decimalsOf, wordOf } from '../reduce/figures/index.ts'
import { symbol } from '../units/symbol.ts'
import { write } from '../units/write.ts'
import { isEarlier } from './chain.ts'
import type { CheckCompared } from './review.ts'
import type { ReviewFile } from './review-file.ts'
import { isFill } from './rows.ts'
import type { Finding, FillEntry } from './schema.ts'
import { roleWords } from '../words/names.ts'
import { say, shown } from '../words/say.ts'

/** Two browsers may differ in the last digits of a power or logarithm. */
const sameTo = 1e-9

type Figures = Readonly<Record<string, { value: number; unit: string }>>

/** Everything that does not fit, the entries first, then the checks. */
export function toldOf(file: ReviewFile, checks: readonly CheckCompared[]): Finding[] {
  return [
    ...leftOut(file),
    ...file.entries.filter(isFill).flatMap((entry) => otherReadings(entry, file).concat(readBack(entry))),
    ...backwards(file),
    ...filesMissing(file),
    ...checks.flatMap(({ test, text, recorded, here, same }): Finding[] =>
      same
        ? []
        : [
            remark(
              roleWords(test),
              say`The check “${text}” is ${shown(recorded)} in the file and ${shown(here)} here.`,
            ),
          ],
    ),
  ]
}

const finding =
  (weight: Finding['weight']) =>
  (about: string, text: string): Finding => ({ weight, about, text })
const [remark, toCorrect, fault] = [finding('remark'), finding('to correct'), finding('fault')]
const aboutEntry = (number: number, what = ''): string => (what ? say`entry ${number}: ${what}` : say`entry ${number}`)

/** Entries of the job that the sender's book holds, or that others name, and that are not in the file. */
function leftOut({ entries, proof }: ReviewFile): Finding[] {
  const here = new Set(entries.map(({ number }) => number))
  const stated = proof.ofJob
  const whole = say`the whole file`
  const told: Finding[] = []
  if (stated === undefined)
    told.push(
      remark(
        whole,
        say`The file does not say how many entries of this job the book holds: it is of an earlier version.`,
      ),
    )
  const missing = (stated ?? []).filter((number) => !here.has(number))
  if (missing.length > 0)
    told.push(
      fault(
        whole,
        say`The book holds ${stated?.length ?? 0} entries of this job, and ${missing.length} of them are not in the file: ${some(missing)}.`,
      ),
    )
  for (const entry of entries) {
    const names = isFill(entry)
      ? [entry.earlier]
      : [entry.of, ...(entry.kind === 'follow-up' ? [entry.resubmittedAs] : [])]
    for (const number of names)
      if (number !== undefined && !here.has(number) && !missing.includes(number))
        told.push(fault(aboutEntry(entry.number), say`It names entry ${number}, which is not in the file.`))
  }
  const beyond = entries.filter(({ number }) => stated && !stated.includes(number)).map(({ number }) => number)
  if (beyond.length > 0)
    told.push(fault(whole, say`The file holds entries that the book does not count to this job: ${some(beyond)}.`))
  return told
}

const some = (numbers: readonly number[]): string =>
  numbers.length > 20 ? say`${numbers.slice(0, 20).join(', ')} and ${numbers.length - 20} more` : numbers.join(', ')

const figuresOf = (job: Job, id: string, devices: readonly Device[]): Figures | undefined => {
  const test = job.tests.find((one) => one.id === id)
  return test && (reduceTest(job, test, [...devices]).report?.figures ?? {})
}

/** What the readings of an entry come to, against those of the file, and against what the entry itself holds. */
function otherReadings(entry: FillEntry, { job, devices }: ReviewFile): Finding[] {
  const { readings, basis } = entry
  if (!readings || entry.kind === 'undo') return []
  const told: Finding[] = []
  for (const [test, key] of roleKeys(readings.tests)) {
    const about = aboutEntry(entry.number, roleWords(key))
    const then = figuresOf(readings, test.id, basis?.devices ?? devices) ?? {}
    const now = figuresOf(job, test.id, devices)
    if (now === undefined) {
      told.push(toCorrect(about, say`This test of the entry is not among the tests of the file any more.`))
      continue
    }
    const moved = differing(then, now)
    if (moved.length > 0)
      told.push(
        toCorrect(
          about,
          say`Readings, device or sizes were changed after the fill. ${compared(moved, then, now, (name, was, is) => say`${name}: ${was} at the fill, ${is} now`)}`,
        ),
      )
    const held = basis?.tests.find((one) => one.test === test.id)?.figures ?? {}
    const unlike = differing(held, then).filter((id) => Object.hasOwn(held, id))
    if (unlike.length > 0)
      told.push(
        toCorrect(
          about,
          say`The entry holds figures that its own readings do not give here. ${compared(unlike, held, then, (name, was, is) => say`${name}: ${was} in the entry, ${is} here`)}`,
        ),
      )
  }
  return told
}

/** Ids of the figures that are not the same, or that only one has. */
function differing(one: Figures, other: Figures): string[] {
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].filter((id) => {
    const [a, b] = [one[id], other[id]]
    if (!a || !b) return true
    return a.unit !== b.unit || Math.abs(a.value - b.value) > sameTo * Math.max(Math.abs(a.value), Math.abs(b.value))
  })
}

/** `ACH50: 2.86 at the fill, 2.35 now; 4 more figures differ.` */
function compared(
  ids: readonly string[],
  one: Figures,
  other: Figures,
  words: (name: string, was: string, is: string) => string,
): string {
  const first = ids.slice(0, 3).map((id) => {
    const unit = (one[id] ?? other[id])?.unit ?? ''
    return words(wordOf(id, unit), written(id, one[id]), written(id, other[id]))
  })
  const more = ids.length - first.length
  return `${[...first, ...(more > 0 ? [say`${more} more figures differ`] : [])].join('; ')}.`
}

const written = (id: string, figure: Figures[string] | undefined): string =>
  figure ? `${write(figure.value, { decimals: decimalsOf(id, figure.unit) })} ${symbol(figure.unit)}`.trim() : say`none`

/** Controls that did not hold what was meant, or were not reached. */
function readBack(entry: FillEntry): Finding[] {
  const reached = new Set(entry.lines.map(({ binding }) => binding))
  return [
    ...(entry.complete ? [] : [remark(aboutEntry(entry.number), say`The fill did not go through to its end.`)]),
    ...entry.lines.flatMap(({ control, intended, readBack: held, outcome }): Finding[] =>
      outcome === 'entered' && intended === held
        ? []
        : [
            remark(
              aboutEntry(entry.number, control),
              say`“${intended}” was to be entered; the page then held “${held}” (${shown(outcome)}).`,
            ),
          ],
    ),
    ...entry.planned.flatMap(({ binding, control, text }): Finding[] =>
      reached.has(binding)
        ? []
        : [remark(aboutEntry(entry.number, control), say`“${text}” was to be entered, and the fill did not reach it.`)],
    ),
  ]
}

/** Entries that bear an earlier time than one before them. */
function backwards({ entries, proof }: ReviewFile): Finding[] {
  const taken = proof.takenIn ?? []
  return entries.flatMap((entry, at): Finding[] => {
    const before = entries[at - 1]
    const from = taken.find((one) => one.from <= entry.number && entry.number <= one.to)
    return [
      ...(before && isEarlier(entry.at, before.at)
        ? [
            toCorrect(
              aboutEntry(entry.number),
              say`It bears the time ${entry.at}, which is before that of entry ${before.number}, ${before.at}.`,
            ),
          ]
        : []),
      ...(from
        ? [
            remark(
              aboutEntry(entry.number),
              say`It came out of a file (${from.file}, taken in at ${from.at}), and was not typed in this book.`,
            ),
          ]
        : []),
    ]
  })
}

function filesMissing({ entries, blobs }: ReviewFile): Finding[] {
  return entries.flatMap((entry): Finding[] =>
    entry.kind === 'attachment' && !blobs.has(entry.file.sha256)
      ? [toCorrect(aboutEntry(entry.number), say`${entry.file.name} is not in the file, only its fingerprint.`)]
      : [],
  )
}
