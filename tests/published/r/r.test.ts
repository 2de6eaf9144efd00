/**
 * The engine against R 4.2.2 (R Core Team): lm, confint and predict of its stats package, on 35 invented sheets. oracle.R
 * holds the other half and says from which published equations it was written; answers.json is what it printed. R is not
 * needed to run this test.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { reduce } from '../../../lib/engine/index.ts'
import { sheetSchema, type Sheet } from '../../../lib/sheet/schema.ts'
import { off } from '../support.ts'
import { TOLERANCE, type Whole, wholeMisses } from './whole.ts'

type Answer = {
  fit?: Record<string, number>
  figures: Record<string, number | number[]>
  withInstrument: Record<string, Whole>
}

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'))
const sheets = read('sheets.json') as { name: string; sheet: Sheet }[]
const answers = read('answers.json') as Record<string, Answer>

test('the sheets are sheets, R has answered each of them, and they are varied', () => {
  for (const { sheet } of sheets) expect(sheetSchema.parse(sheet)).toEqual(sheet)
  expect(Object.keys(answers)).toEqual(sheets.map(({ name }) => name))
  const regressions = sheets.filter(({ sheet }) => sheet.procedure !== 'one-point')
  expect(regressions.length).toBeGreaterThanOrEqual(24)
  const kinds = (of: (sheet: Sheet) => unknown) => new Set(regressions.map(({ sheet }) => String(of(sheet)))).size
  expect(kinds((sheet) => [sheet.procedure, sheet.direction, sheet.units.flow])).toBeGreaterThanOrEqual(12)
  expect(kinds((sheet) => sheet.subject)).toBe(2)
  expect(kinds((sheet) => sheet.flowBasis)).toBe(2)
  expect(kinds((sheet) => [!sheet.air, !sheet.air?.elevation, !sheet.air?.barometer])).toBe(5)
  expect(kinds((sheet) => 'flow' in (sheet.points[0] ?? {}))).toBe(2)
  expect(kinds((sheet) => [sheet.baseline.before.length, sheet.baseline.after.length])).toBe(3)
})

describe.each(sheets)('$name', ({ name, sheet }) => {
  const report = reduce(sheet, { instrumentUncertainty: false })
  const answer = answers[name]!

  test.each(Object.entries(answer.fit ?? {}))('fit: %s', (key, expected) => {
    expect(off(report.fit?.[key as 'exponent'], expected)).toBeLessThan(TOLERANCE)
  })

  test.each(Object.entries(answer.figures))('%s', (id, expected) => {
    const [value, low, high] = [expected].flat()
    const found = report.figures[id]
    expect(off(found?.value, value ?? Number.NaN)).toBeLessThan(TOLERANCE)
    if (low === undefined || high === undefined) return
    expect(off(found?.low, low)).toBeLessThan(TOLERANCE)
    expect(off(found?.high, high)).toBeLessThan(TOLERANCE)
  })

  test('the whole uncertainty, with its budget and its degrees of freedom', () => {
    expect(wholeMisses(reduce(sheet), answer.withInstrument)).toEqual([])
  })
})
