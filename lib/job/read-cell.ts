/** What was typed into a cell that holds a number: the number, and the unit that may stand behind it. */
import type { Marks } from '../units/marks.ts'
import { readNumber } from '../units/read.ts'

/** Spellings of units that stand behind a number, without spaces and full stops, in lower case. */
const SPELLINGS: Record<string, string> = {
  pa: 'Pa',
  hpa: 'hPa',
  mbar: 'hPa',
  inh2o: 'inH2O',
  inwc: 'inH2O',
  inhg: 'inHg',
  cfm: 'cfm',
  'ft3/min': 'cfm',
  'm3/h': 'm3/h',
  cmh: 'm3/h',
  'l/s': 'L/s',
  f: 'degF',
  '°f': 'degF',
  degf: 'degF',
  c: 'degC',
  '°c': 'degC',
  degc: 'degC',
  ft: 'ft',
  feet: 'ft',
  m: 'm',
  in2: 'in2',
  sqin: 'in2',
  cm2: 'cm2',
  sqcm: 'cm2',
  ft2: 'ft2',
  sqft: 'ft2',
  sf: 'ft2',
  m2: 'm2',
  sqm: 'm2',
  ft3: 'ft3',
  cuft: 'ft3',
  cf: 'ft3',
  m3: 'm3',
  '%': '%',
  'kg/m3': 'kg/m3',
}

const NUMBER_THEN_UNIT =
  /^([-+−–]?\s?[\d.,'’\s\u00a0\u2009\u202f]*\d[.,]?)\s*([^\d\s.,](?:[^\d]*|[^\d]*[23](?:[^\d]*|\/\D+)))$/
const LONGEST = 60

/** A number with letters in it that are taken for digits: `5O`, `1l.2`. */
export const MISREAD = /^[-+\u2212\u2013]?\d[\d.,]*[OoIl][\dOoIl.,]*$/

export type Reading =
  | { value: number; unit: string; own: boolean }
  | { fault: 'empty' | 'long' | 'text' | 'unit'; unit?: string }
  | { fault: 'two ways'; message: string }

/**
 * The number in a cell's text and its unit: the one written behind it (`own`), else the cell's.
 *
 * @example readCell('790 cfm', 'm3/h') // { value: 790, unit: 'cfm', own: true }
 */
export function readCell(text: string, unit: string, marks?: Marks): Reading {
  if (text.length > LONGEST) return text.trim() === '' ? { fault: 'empty' } : { fault: 'long' }
  const trimmed = text.trim()
  if (trimmed === '') return { fault: 'empty' }
  const plain = readNumber(trimmed, marks)
  if (typeof plain === 'number') return { value: plain, unit, own: false }
  if (plain.code === 'two ways') return { fault: 'two ways', message: plain.message }
  if (MISREAD.test(trimmed)) return { fault: 'text' }
  const [, number = '', behind = ''] = NUMBER_THEN_UNIT.exec(trimmed) ?? []
  const value = readNumber(number, marks)
  if (typeof value !== 'number')
    return value.code === 'two ways' ? { fault: 'two ways', message: value.message } : { fault: 'text' }
  const spelling = behind
    .toLowerCase()
    .replaceAll(/[\s.^]/g, '')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
  const found = Object.hasOwn(SPELLINGS, spelling) ? SPELLINGS[spelling] : undefined
  return found === undefined ? { fault: 'unit', unit: behind } : { value, unit: found, own: true }
}

export const quote = (text: string): string => `“${text.length > 24 ? `${text.slice(0, 24)}…` : text}”`
