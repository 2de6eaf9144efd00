/** Numbers in the writing of a locale. What is quoted stays as it is, and so does an edition or a clause. */
import { language } from '../words/say.ts'
import type { Reading } from './reading.ts'
import type { TogetherWords } from './together-lines.ts'
import type { VerdictProps } from './shown.ts'

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

/** What closes a quotation, by what opens it, in each language that the texts come in. */
const closing: Readonly<Record<string, string>> = { '“': '”', '„': '“', '«': '»' }
/** A number with a decimal point or thousands commas; not a clause such as 402.4.1.2, nor a standard by its number. */
const number = /(?<![\w.,]|ASHRAE )(\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\.\d+)(?![\w]|[.,]\d)/g

/** A text of ours with its numbers as the locale has them. */
export function inLocale(text: string, { decimal, group }: Marks): string {
  const swap = (found: string) => found.replaceAll(/[.,]/g, (mark) => (mark === '.' ? decimal : group))
  let [written, at, unclosed] = ['', 0, '']
  for (const { 0: mark, index } of text.matchAll(/[“„«]/g)) {
    // A mark that nothing closes is not looked for again.
    if (index < at || unclosed.includes(mark)) continue
    const end = text.indexOf(closing[mark] ?? '', index + 1) + 1
    if (end === 0) unclosed += mark
    else {
      written += text.slice(at, index).replaceAll(number, swap) + text.slice(index, end)
      at = end
    }
  }
  return written + text.slice(at).replaceAll(number, swap)
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

/** Texts of ours, in a list or in an object, as the locale has their numbers. */
export function wordsInLocale<T>(words: T, locale: string): T {
  const marks = marksOf(locale)
  return marks.decimal === '.' && marks.group === ',' ? words : (deep(words, marks) as T)
}

/** One text of ours as the reader's language writes its numbers. */
export const asRead = (text: string): string => inLocale(text, marksOf(language()))

/** A verdict's drawing writes its numbers itself, with the mark that it is given. */
function marked(verdict: VerdictProps | undefined, locale: string): void {
  const { decimal } = marksOf(locale)
  if (verdict?.interval && decimal !== '.') verdict.interval.mark = decimal
}

export function readingInLocale(reading: Reading, locale: string): Reading {
  const written = wordsInLocale(reading, locale)
  marked(written.verdict, locale)
  return written
}

export function togetherInLocale(words: TogetherWords, locale: string): TogetherWords {
  const written = wordsInLocale(words, locale)
  for (const verdict of written.verdicts) marked(verdict, locale)
  return written
}
