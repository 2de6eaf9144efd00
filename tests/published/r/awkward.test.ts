/**
 * The engine against R 4.2.2 (R Core Team), as in r.test.ts, where a fit loses digits or a correction weighs most: three
 * points, points on a line, wide noise, large baselines, 8,000 ft, -30 degC, clustered pressures, 240 points. The fit is
 * held to 1e-9, what follows from it to 1e-6.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { reduce } from '../../../lib/engine/index.ts'
import { sheetSchema, type Sheet } from '../../../lib/sheet/schema.ts'
import { type Whole, wholeMisses } from './whole.ts'

type Triple = number | number[]
interface Answer {
  fit: Record<'coefficient' | 'exponent' | 'correlation' | `${'coefficient' | 'exponent'}${'Low' | 'High'}`, number>
  figures: Record<string, Triple>
  withInstrument: Record<string, Whole>
}

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'))
const sheets = read('awkward.json') as { name: string; sheet: Sheet }[]
const answers = read('awkward-answers.json') as Record<string, Answer>

/** Distances above a tolerance, each relative to the size of what it belongs to. */
function misses(found: Record<string, Triple>, expected: Record<string, Triple>, tolerance: number): string[] {
  return Object.entries(expected).flatMap(([id, answer]) => {
    const [values, wanted] = [[found[id] ?? Number.NaN].flat(), [answer].flat()]
    const size = Math.abs(wanted[0]!)
    return wanted.flatMap((want, at) => {
      const off = Math.abs((values[at] ?? Number.NaN) - want) / size
      return off < tolerance ? [] : [`${id} ${['value', 'low', 'high'][at]}: ${values[at]}, R ${want}, off ${off}`]
    })
  })
}

const triples = (figures: ReturnType<typeof reduce>['figures']) =>
  Object.fromEntries(
    Object.entries(figures).map(([id, { value, low, high }]) => [
      id,
      low === undefined || high === undefined ? [value] : [value, low, high],
    ]),
  )

test('there are awkward sheets of each kind, and R has answered each', () => {
  for (const { sheet } of sheets) expect(sheetSchema.parse(sheet)).toEqual(sheet)
  expect(Object.keys(answers)).toEqual(sheets.map(({ name }) => name))
  expect(sheets.length).toBeGreaterThanOrEqual(36)
  for (const { fit } of Object.values(answers)) expect(Number.isFinite(fit.exponentLow)).toBe(true)
})

describe.each(sheets)('$name', ({ name, sheet }) => {
  const report = reduce(sheet, { instrumentUncertainty: false })
  const answer = answers[name]!

  test('the fit is that of R', () => {
    const { points, ...fit } = report.fit!
    expect(points).toBe(sheet.points.length)
    expect(Object.keys(fit).toSorted()).toEqual(Object.keys(answer.fit).toSorted())
    expect(misses(fit, answer.fit, 1e-9)).toEqual([])
  })

  test('every figure with its interval is that of R', () => {
    expect(misses(triples(report.figures), answer.figures, 1e-6)).toEqual([])
  })

  test('the whole uncertainty of every figure, with its budget and its degrees of freedom, is that of R', () => {
    expect(wholeMisses(reduce(sheet), answer.withInstrument)).toEqual([])
  })
})
