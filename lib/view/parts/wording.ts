/** Small things said in words. */
import { language, say, shown } from '../../words/say.ts'
import { pdfForms } from '../../form/map/address.ts'
import { asRead } from '../../results/in-locale.ts'

/** A whole number with its thousands parted. */
export const grouped = (number: number): string => number.toLocaleString(language())

export const wording = (error: unknown): string => (error instanceof Error ? error.message : String(error))

const thisYear = new Intl.DateTimeFormat(language(), { day: 'numeric', month: 'short' })
const anyYear = new Intl.DateTimeFormat(language(), { day: 'numeric', month: 'short', year: 'numeric' })
const clock = new Intl.DateTimeFormat(language(), { hour: '2-digit', minute: '2-digit', hour12: false })

/** The day of a time, with its year unless it is this year. */
export function day(iso: string, now: Date = new Date()): string {
  const date = new Date(iso)
  if (Number.isNaN(date.getTime())) return iso
  return (date.getFullYear() === now.getFullYear() ? thisYear : anyYear).format(date)
}

export function dayAndYear(iso: string): string {
  const date = new Date(iso)
  return Number.isNaN(date.getTime()) ? iso : anyYear.format(date)
}

export function time(iso: string): string {
  const date = new Date(iso)
  return Number.isNaN(date.getTime()) ? '' : clock.format(date)
}

/** `1 entry`, `2 entries`; the words are among those that are kept in English. */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${grouped(number)} ${shown(number === 1 ? one : many)}`
}

/** Where a form is found, as it is shown: the site without its scheme, or that it is a file. */
export const placeWords = ({ origin, path }: { origin: string; path: string }): string =>
  origin === pdfForms ? say`PDF form ${path.slice(1)}` : `${origin.replace(/^https?:\/\//, '')}${path}`

/** `1 book`, `2 books`. */
export const bookCount = (number: number): string => (number === 1 ? say`1 book` : say`${grouped(number)} books`)

const small = [
  say`No`,
  say`One`,
  say`Two`,
  say`Three`,
  say`Four`,
  say`Five`,
  say`Six`,
  say`Seven`,
  say`Eight`,
  say`Nine`,
  say`Ten`,
  say`Eleven`,
  say`Twelve`,
]

/** A number at the head of a sentence. */
export const numeral = (number: number): string => small[number] ?? grouped(number)

export function bytes(number: number): string {
  const units = ['B', 'kB', 'MB', 'GB', 'TB']
  const power = Math.min(units.length - 1, Math.floor(Math.log10(Math.max(1, number)) / 3))
  const value = number / 1000 ** power
  return `${asRead(value.toFixed(value < 10 && power > 0 ? 1 : 0))} ${units[power]}`
}
