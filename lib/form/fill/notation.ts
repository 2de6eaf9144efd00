/** Whether a page shows what was typed in a notation of its own: the same number, date, time or text. */
import { numberIn } from '../../units/number-in.ts'
import { patternIn, readDate } from '../dates.ts'
import { readAnyDate } from '../kinds/calendar/read.ts'
import type { Control } from '../page/controls.ts'
import { unitIn } from '../map/unit-in.ts'
import { languageOf } from '../page/hints.ts'
import { sameness } from '../same.ts'
import { squeeze } from '../words.ts'

export interface Notation {
  /** Order and marks of a date, as typed. */
  date?: string | undefined
  /** Language of the page around the control. */
  language?: string | undefined
}

/** No page writes a number, a date or a code longer than this in its own way. */
const longest = 60

/** Whether the language writes a decimal comma, and a point between thousands. */
function pointsThousands(language: string | undefined): boolean {
  try {
    return new Intl.NumberFormat(language || 'en').format(1.5).includes(',')
  } catch {
    // The page names a language that is none.
    return false
  }
}

/** The number in front of, or behind, nothing but a unit or a currency sign. */
function measured(text: string): { number: string; unit: string } | undefined {
  const found = /^([\p{Sc}\s]*)([-−–+]?\s?[\d.,' \u00A0\u202F’]*\d)\s*([\p{L}\p{Sc}%°²³µ/·.\s]{0,16})$/u.exec(text)
  if (!found) return undefined
  const unit = (found[3] ?? '').trim()
  // Another word behind a number may be anything; one letter may stand for thousands.
  if (unit !== '' && !/^([\p{Sc}%]|°[CF]?)$/u.test(unit) && unitIn(unit) === undefined) return undefined
  return { number: (found[2] ?? '').trim(), unit }
}

function sameNumber(intended: string, shown: string, language: string | undefined): boolean {
  const one = measured(intended)
  const other = measured(shown)
  if (!one || !other) return false
  if (one.unit !== '' && one.unit.toLowerCase() !== other.unit.toLowerCase()) return false
  // A code keeps its zeros.
  if (/^0\d/.test(one.number) || /^0\d/.test(other.number)) return false
  if (sameness(one.number, other.number) !== 'different') return true
  if (!pointsThousands(language) || !/^\d{1,3}(\.\d{3})+$/.test(other.number)) return false
  return /^\d+$/.test(one.number) && other.number.replaceAll('.', '') === one.number
}

/** The date as year-month-day where the whole text is one and can mean only one. */
function dateIn(text: string, pattern: string | undefined): string | undefined {
  if (/^\d{4}\D\d{1,2}\D\d{1,2}\.?$|\p{L}{3}/u.test(text)) return readAnyDate(text)
  if (pattern === undefined) return undefined
  // The same order with other marks.
  return readDate(text.replaceAll(/[-./]\s?/g, '/'), pattern.replaceAll(/[-./]\s?/g, '/'))
}

function sameDate(intended: string, shown: string, pattern: string | undefined): boolean {
  const date = dateIn(intended, pattern)
  return date !== undefined && date === dateIn(shown, pattern)
}

/** Minutes since midnight. */
function timeIn(text: string): number | undefined {
  const found = /^(\d{1,2})[:.](\d{2})(?::00)?\s*(?:([ap])\.?m\.?)?$/i.exec(text)
  if (!found) return undefined
  const hour = Number(found[1])
  const half = (found[3] ?? '').toLowerCase()
  return (half === 'p' && hour < 12 ? hour + 12 : half === 'a' && hour === 12 ? 0 : hour) * 60 + Number(found[2])
}

/** A code or a phone number without the marks that set its parts apart; a mark between digits may be part of a number. */
function codeIn(text: string): string {
  if (/^[\d\s()+./-]+$/.test(text) && text.replaceAll(/\D/g, '').length >= 7) return text.replaceAll(/\D/g, '')
  return text.replaceAll(/(?<!\d)[-\s()/]+|[-\s()/]+(?!\d)/g, '').toLowerCase()
}

/** Whether what is shown means what was typed, though it is written otherwise. */
export function inOwnNotation(intended: string, shown: string, { date, language }: Notation = {}): boolean {
  const one = squeeze(intended)
  const other = squeeze(shown)
  if (one === '' || other === '') return false
  if (one.toLowerCase() === other.toLowerCase()) return true
  if (one.length > longest || other.length > longest) return false
  if (sameNumber(one, other, language) || sameDate(one, other, date)) return true
  const [from, to] = [timeIn(one), timeIn(other)]
  if (from !== undefined && to !== undefined) return from === to
  // Two numbers that are not the same are no code either.
  if (numberIn(one) !== undefined && numberIn(other) !== undefined) return false
  return codeIn(one) === codeIn(other) && codeIn(one).length >= 3
}

/** In what notation of its own a page may show what was typed. `date`: the pattern by which a date was written. */
export function notationOf(control: Control, date?: string): Notation {
  const { placeholder } = control.element as HTMLInputElement
  return { date: date ?? patternIn(placeholder ?? ''), language: control.far ? '' : languageOf(control) }
}
