/** Whether a page shows what was typed in a notation of its own: the same number, date, time or text. */
import { numberIn } from '../../units/number-in.ts'
import { patternIn, readDate } from '../dates.ts'
import { itemOf } from '../item-of.ts'
import { readAnyDate } from '../kinds/calendar/read.ts'
import { months } from '../kinds/date-parts.ts'
import type { Material } from '../material.ts'
import type { Control } from '../page/controls.ts'
import { wholeUnit } from '../map/unit-in.ts'
import { languageOf } from '../page/hints.ts'
import type { Source } from '../schema.ts'
import { squeeze } from '../words.ts'

export interface Notation {
  /** Order and marks of a date, as typed. */
  date?: string | undefined
  /** Decimal mark, as typed; absent where a person typed the text for this page. */
  mark?: '.' | ',' | undefined
  /** Unit of a number that was typed without it; absent where it is not known. */
  unit?: string | undefined
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

/** A number with nothing but a unit, a percent sign or a currency beside it. */
interface Measured {
  number: string
  unit: string
  currency: string
}

function measured(text: string): Measured | undefined {
  const found = /^(\p{Sc}?)\s*([-−–+]?\s?[\d.,' \u00A0\u202F’]*\d)\s*([\p{L}\p{Sc}%°²³µ\d/·.\s]{0,16})$/u.exec(text)
  if (!found) return undefined
  const [, before = '', number = '', behind = ''] = found
  const after = behind.trim()
  const currency = /^\p{Sc}$/u.test(after) ? after : ''
  const unit = after === '' || currency ? '' : after === '%' ? '%' : wholeUnit(after)
  // Another word behind a number may be anything: thousands, "or more".
  if (unit === undefined || (before && currency)) return undefined
  return { number: number.trim(), unit, currency: before || currency }
}

/** The number as who writes a decimal comma, or a point, reads it: `1,445` is one of two. */
function valueOf(text: string, comma: boolean): number | undefined {
  const either = /^([-−–+]?\s?)([1-9]\d{0,2})([.,])(\d{3})$/.exec(text)
  if (!either) return numberIn(text)
  const [, sign = '', whole = '', mark, rest = ''] = either
  return numberIn(`${sign}${whole}${(mark === ',') === comma ? '.' : ''}${rest}`)
}

/** The same number, in the same unit where one is said or known. Decided by the text that was typed. */
function sameNumber(one: Measured, shown: string, { mark, unit, language }: Notation): boolean {
  const other = measured(shown)
  if (!other) return false
  if (one.unit !== '' ? one.unit !== other.unit : other.unit !== '' && unit !== undefined && other.unit !== unit)
    return false
  if (one.currency && one.currency !== other.currency) return false
  // A code keeps its zeros.
  if (/^0\d/.test(one.number) || /^0\d/.test(other.number)) return false
  const page = pointsThousands(language)
  const meant = valueOf(one.number, mark === undefined ? page : mark === ',')
  return meant !== undefined && meant === valueOf(other.number, page)
}

const monthNames = String.raw`(?:${months.join('|')})\p{L}*`
/** A text that is a date and nothing else, and means one: year first, or with the month in words. */
const wholeDate = new RegExp(
  String.raw`^(?:\d{4}[-/]\d{1,2}[-/]\d{1,2}|${monthNames}\.? \d{1,2}(?:st|nd|rd|th)?,? \d{4}|\d{1,2}(?:st|nd|rd|th|\.)? (?:of )?${monthNames}\.?,? \d{4})$`,
  'iu',
)

/** The date as year-month-day where the whole text is one and can mean only one. */
function dateIn(text: string, pattern: string | undefined): string | undefined {
  if (wholeDate.test(text)) return readAnyDate(text)
  if (pattern === undefined) return undefined
  // The same order with other marks.
  return readDate(text.replaceAll(/[-./]\s?/g, '/'), pattern.replaceAll(/[-./]\s?/g, '/'))
}

/** Minutes since midnight; hours and minutes stand on either side of a colon. */
function timeIn(text: string): number | undefined {
  const found = /^(\d{1,2}):(\d{2})(?::00)?\s*(?:([ap])\.?m\.?)?$/i.exec(text)
  if (!found) return undefined
  const hour = Number(found[1])
  const half = (found[3] ?? '').toLowerCase()
  return (half === 'p' && hour < 12 ? hour + 12 : half === 'a' && hour === 12 ? 0 : hour) * 60 + Number(found[2])
}

/** The digits of a phone number or a long code of digits, however their groups are set apart; not of a date. */
function digitsIn(text: string): string | undefined {
  if (!/^[\d\s()+./-]+$/.test(text) || /^\d{1,4}([-/.])\d{1,2}\1\d{1,4}$/.test(text)) return undefined
  const digits = text.replaceAll(/\D/g, '')
  return digits.length >= 7 ? digits : undefined
}

/** A code of letters and digits without the marks beside its letters; one between digits may be part of a number. */
const codeIn = (text: string): string | undefined =>
  /\p{L}/u.test(text) ? text.replaceAll(/(?<=\p{L})[-\s()/]+|[-\s()/]+(?=\p{L})/gu, '').toLowerCase() : undefined

const alike = (one: string | number | undefined, other: string | number | undefined): boolean =>
  one !== undefined && one === other

/**
 * Whether what is shown means what was typed, though it is written otherwise. What was typed decides as what it is
 * compared: a date as a date, a number as a number, and as nothing else.
 */
export function inOwnNotation(intended: string, shown: string, notation: Notation = {}): boolean {
  const one = squeeze(intended)
  const other = squeeze(shown)
  if (one === '' || other === '') return false
  if (one.toLowerCase() === other.toLowerCase()) return true
  if (one.length > longest || other.length > longest) return false
  const date = dateIn(one, notation.date)
  if (date !== undefined) return date === dateIn(other, notation.date)
  const time = timeIn(one)
  if (time !== undefined) return time === timeIn(other)
  const phone = alike(digitsIn(one), digitsIn(other)) && (numberIn(one) === undefined || numberIn(other) === undefined)
  const number = measured(one)
  if (number) return phone || sameNumber(number, other, notation)
  const code = codeIn(one)
  return phone || ((code?.length ?? 0) >= 3 && alike(code, codeIn(other)))
}

/** In what notation of its own a page may show what was typed from `source`. */
export function notationOf(control: Control, source?: Source, material?: Material): Notation {
  const { placeholder } = control.element as HTMLInputElement
  const write = source?.from === 'item' ? source.write : undefined
  const item = source?.from === 'item' && material ? itemOf(material, source.item) : undefined
  const number = item?.kind === 'quantity'
  return {
    date: write?.date ?? patternIn(placeholder ?? ''),
    ...(number && { mark: write?.mark ?? '.', unit: write?.unit ?? item.unit }),
    language: control.far ? '' : languageOf(control),
  }
}
