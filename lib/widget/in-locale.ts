/** Numbers in the writing of a locale. The words stay English, and so does what is quoted, an edition or a clause. */
import type { Job, Test } from '../job/schema.ts'
import type { Reading } from '../view/calculator/reading.ts'
import { sizeCells } from './typed.ts'

interface Marks {
  decimal: string
  group: string
}

const known = new Map<string, Marks>()

export function marksOf(locale: string): Marks {
  let found = known.get(locale)
  if (!found) {
    found = { decimal: '.', group: ',' }
    try {
      for (const { type, value } of new Intl.NumberFormat(locale || 'en', {
        numberingSystem: 'latn',
        minimumFractionDigits: 1,
        useGrouping: true,
      }).formatToParts(12_345.6)) {
        if (type === 'decimal' || type === 'group') found[type] = value
      }
    } catch {
      // A tag that is none leaves numbers as they are.
    }
    known.set(locale, found)
  }
  return found
}

const quoted = /(“[^”]*”)/
/** A number with a decimal point or thousands commas; not a clause such as 402.4.1.2, nor a standard by its number. */
const number = /(?<![\w.,]|ASHRAE )(\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\.\d+)(?![\w]|[.,]\d)/g

/** A text of ours with its numbers as the locale has them. */
export function inLocale(text: string, { decimal, group }: Marks): string {
  const swap = (found: string) => found.replaceAll(/[.,]/g, (mark) => (mark === '.' ? decimal : group))
  return text
    .split(quoted)
    .map((part, at) => (at % 2 === 1 ? part : part.replaceAll(number, swap)))
    .join('')
}

/** Names, ids and sources are left alone. */
const asTheyAre = new Set(['id', 'source', 'name', 'unit', 'for', 'outcome', 'title'])

function deep(value: unknown, marks: Marks): unknown {
  if (typeof value === 'string') return inLocale(value, marks)
  if (Array.isArray(value)) return value.map((one) => deep(one, marks))
  if (value instanceof Map) return new Map([...value].map(([key, one]) => [key, deep(one, marks)]))
  if (typeof value !== 'object' || value === null || value instanceof Set) return value
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, asTheyAre.has(key) ? one : deep(one, marks)]),
  )
}

export function readingInLocale(reading: Reading, locale: string): Reading {
  const marks = marksOf(locale)
  if (marks.decimal === '.' && marks.group === ',') return reading
  const written = deep(reading, marks) as Reading
  const interval = written.verdict?.interval
  if (interval) interval.mark = marks.decimal
  return written
}

/** Typed numbers with a decimal comma, and points between thousands, as the reader of cells takes them. */
const plain = (text: string): string =>
  text.replaceAll(/(?<=\d)[.'’](?=\d{3}(?!\d))/g, '').replaceAll(/,(?=\d)|(?<=\d),/g, '.')

const cells = <T extends object>(from: T, keys: readonly (keyof T)[]): T => ({
  ...from,
  ...Object.fromEntries(keys.map((key) => [key, plain(String(from[key]))])),
})

/** The job as read where numbers have a decimal comma. */
export function jobFromLocale(job: Job, locale: string): Job {
  if (marksOf(locale).decimal !== ',') return job
  return {
    ...job,
    building: cells(job.building, sizeCells),
    tests: job.tests.map((test): Test => {
      const sheet = cells(test.sheet, [
        'baselineBefore',
        'baselineAfter',
        'indoor',
        'outdoor',
        'barometer',
        'exponent',
        'exponentUncertainty',
        'pressurePercent',
        'pressureFloor',
        'flowPercent',
        'airHandlerFlow',
      ])
      const points = sheet.points.map((point) => cells(point, ['pressure', 'flow', 'devicePressure']))
      return { ...cells(test, ['instrumentFigure', 'ownLimit']), sheet: { ...sheet, points } }
    }),
  }
}
