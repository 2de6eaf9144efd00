/**
 * The whole uncertainty of the engine against R 4.2.2 (R Core Team) where its parts weigh most differently: several
 * baseline readings, drift, averaging times, several ranges, repeats, one and two pressures. budget.R works it out from
 * the full covariance matrix of the readings, as JCGM 100:2008 has it, and names its sources; nothing there is the
 * engine's. R is not needed to run this test.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { reduce } from '../../../lib/engine/index.ts'
import { sheetSchema, type Sheet } from '../../../lib/sheet/schema.ts'
import { off } from '../support.ts'
import { TOLERANCE, type Whole, wholeMisses } from './whole.ts'

type Answer = { figures: Record<string, number | number[]>; withInstrument: Record<string, Whole> }

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'))
const sheets = read('budget.json') as { name: string; sheet: Sheet }[]
const answers = read('budget-answers.json') as Record<string, Answer>

test('the sheets are sheets, R has answered each of them, and every part rules in some', () => {
  for (const { sheet } of sheets) expect(sheetSchema.parse(sheet)).toEqual(sheet)
  expect(Object.keys(answers)).toEqual(sheets.map(({ name }) => name))
  const kinds = (of: (sheet: Sheet) => unknown) => new Set(sheets.map(({ sheet }) => String(of(sheet)))).size
  expect(kinds((sheet) => sheet.procedure)).toBe(4)
  expect(kinds((sheet) => new Set(sheet.points.map((point) => 'range' in point && point.range)).size)).toBe(4)
  expect(kinds((sheet) => [sheet.baseline.before.length, sheet.baseline.after.length])).toBeGreaterThanOrEqual(9)
  expect(kinds((sheet) => [sheet.averaging?.baseline, sheet.averaging?.reading])).toBe(6)
  expect(kinds((sheet) => sheet.pressureScatter)).toBe(4)
  expect(kinds((sheet) => sheet.instrument?.flowPercent)).toBe(5)
  const wholes = Object.values(answers).flatMap(({ withInstrument }) => Object.values(withInstrument))
  const largest = (part: string) => Math.max(...wholes.map(({ shares }) => shares[part]!))
  for (const part of ['device', 'gauge', 'wind', 'exponent']) expect(largest(part)).toBeGreaterThan(0.5)
  for (const part of ['baseline', 'drift', 'size']) expect(largest(part)).toBeGreaterThan(0.2)
  // Coverage factors of few degrees of freedom, of many, and of so many that it is 2.
  const freedoms = wholes.map(({ freedom }) => freedom)
  for (const some of [0, 1, 3, 4, 5]) expect(freedoms).toContain(some)
  expect(Math.max(...freedoms)).toBeGreaterThan(40)
})

describe.each(sheets)('$name', ({ name, sheet }) => {
  const answer = answers[name]!

  test('every figure without the instrument', () => {
    const { figures } = reduce(sheet, { instrumentUncertainty: false })
    const misses = Object.entries(answer.figures).filter(([id, expected]) => {
      const { value, low, high } = figures[id] ?? {}
      return [expected].flat().some((want, at) => !(off([value, low, high][at], want) < TOLERANCE))
    })
    expect(misses).toEqual([])
  })

  test('the whole uncertainty, with its budget and its degrees of freedom', () => {
    expect(wholeMisses(reduce(sheet), answer.withInstrument)).toEqual([])
  })
})
