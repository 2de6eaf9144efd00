/** Whatever is typed: a report of finite numbers, or a SheetError; and soon. tests/soak runs the long form. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { reduce } from '../../lib/reduce/reduce.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { fakeRegression } from './sheets.ts'
import { anySheets, brokenSheets, closeSheets, outcomeOf, shownSheets, wildSheets } from './wild.ts'

/** How many sheets came to what. */
function tally(arbitrary: fc.Arbitrary<unknown>, numRuns: number): { report: number; refused: number } {
  const found = { report: 0, refused: 0 }
  fc.assert(
    fc.property(arbitrary, (sheet) => {
      const outcome = outcomeOf(sheet)
      if (outcome !== 'report' && outcome !== 'refused') throw new Error(outcome)
      found[outcome]++
    }),
    { numRuns, seed: 62 },
  )
  return found
}

function time(sheet: Sheet): number {
  const start = performance.now()
  reduce(sheet)
  return performance.now() - start
}

function median(times: number[]): number {
  return times.toSorted((a, b) => a - b)[times.length >> 1]!
}

test('numbers of any kind', () => {
  expect(tally(wildSheets, 1500).refused).toBeGreaterThan(1000)
})

test('anything at all', () => {
  expect(tally(anySheets, 500).refused).toBe(500)
})

test('a sound sheet with one place that holds anything', () => {
  const { report, refused } = tally(brokenSheets, 1500)
  expect(report).toBeGreaterThan(100)
  expect(refused).toBeGreaterThan(300)
})

test('numbers that a gauge could show', () => {
  expect(tally(shownSheets, 1000).report).toBeGreaterThan(300)
})

test('pressures close together and flows of any size', () => {
  const { report, refused } = tally(closeSheets, 500)
  expect(report).toBeGreaterThan(0)
  expect(refused).toBeGreaterThan(0)
})

test('5,000 points are reduced in well under a second, a typical sheet in well under a millisecond', () => {
  const many = fakeRegression({
    points: Array.from({ length: 5000 }, (_, index) => ({
      pressure: -(10 + index / 100),
      flow: 100 * (10 + index / 100) ** 0.65 * (1 + 0.01 * Math.sin(index)),
    })),
  })
  expect(median(Array.from({ length: 5 }, () => time(many)))).toBeLessThan(500)
  const typical = fakeRegression({ air: { indoor: 70, outdoor: 30 }, building: { volume: 20_000, floorArea: 2400 } })
  expect(median(Array.from({ length: 500 }, () => time(typical)))).toBeLessThan(1)
})
