/**
 * Several fans at once against R 4.2.2 (R Core Team): the flow of a point is a sum of flows whose errors are independent,
 * so that the covariance matrix of the logarithms of the flows holds, for each fan, the products of its shares of them
 * (JCGM 100:2008, 5.1.2 and 5.2.2). Nothing of it is the engine's. R is not needed to run this test:
 *
 *     Rscript tests/published/r/oracle.R fans
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { reduce } from '../../../lib/engine/index.ts'
import { sheetSchema, type Sheet } from '../../../lib/sheet/schema.ts'
import { type Whole, wholeMisses } from './whole.ts'

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'))
const sheets = read('fans.json') as { name: string; sheet: Sheet }[]
const answers = read('fans-answers.json') as Record<string, { withInstrument: Record<string, Whole> }>

test('R has answered each sheet, and the fans weigh in all', () => {
  for (const { sheet } of sheets) expect(sheetSchema.parse(sheet)).toEqual(sheet)
  expect(Object.keys(answers)).toEqual(sheets.map(({ name }) => name))
  for (const { withInstrument } of Object.values(answers)) {
    expect(withInstrument['flow-50']!.shares['device']).toBeGreaterThan(0.1)
  }
})

describe.each(sheets)('$name', ({ name, sheet }) => {
  test('the whole uncertainty, with its budget and its degrees of freedom', () => {
    expect(wholeMisses(reduce(sheet), answers[name]!.withInstrument)).toEqual([])
  })
})
