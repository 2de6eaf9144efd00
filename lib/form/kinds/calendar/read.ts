/** Reading a date that a calendar writes in its own way. */
import { readDate } from '../../dates.ts'
import { months } from '../date-parts.ts'

const iso = (year: string, month: number, day: string) =>
  `${year}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}`

/** The date as year-month-day when the text can mean only one: ISO, or with the month in words, or a day above 12. */
export function readAnyDate(text: string, pattern?: string): string | undefined {
  const ordered = /\b(\d{4})[-/](\d{1,2})[-/](\d{1,2})/.exec(text)
  if (ordered) return iso(ordered[1] ?? '', Number(ordered[2]), ordered[3] ?? '')
  const names = `(${months.join('|')})[a-z]*`
  const monthFirst = new RegExp(String.raw`\b${names}\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})\b`, 'i').exec(text)
  if (monthFirst)
    return iso(monthFirst[3] ?? '', months.indexOf((monthFirst[1] ?? '').toLowerCase()) + 1, monthFirst[2] ?? '')
  const dayFirst = new RegExp(String.raw`\b(\d{1,2})(?:st|nd|rd|th|\.)? (?:of )?${names}\.?,? (\d{4})\b`, 'i').exec(
    text,
  )
  if (dayFirst) return iso(dayFirst[3] ?? '', months.indexOf((dayFirst[2] ?? '').toLowerCase()) + 1, dayFirst[1] ?? '')
  return pattern === undefined ? undefined : readDate(text, pattern)
}
