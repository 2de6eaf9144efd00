/**
 * Whatever is typed: a report of finite numbers, or a SheetError; and soon, against something else that is measured in the
 * same run. tests/soak runs the long form.
 */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { reduce } from '../../lib/reduce/reduce.ts'
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

/** Processor time, ms: it stands still while other processes have their turn. */
function spent(what: () => unknown): number {
  const start = process.cpuUsage()
  what()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1000
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

/** The least that each of two things took, over one another; they are taken by turns. */
function ratio(one: () => unknown, other: () => unknown, turns: number): number {
  const least = [Infinity, Infinity] as [number, number]
  for (let turn = 0; turn < turns; turn++) {
    least[0] = Math.min(least[0], spent(one))
    least[1] = Math.min(least[1], spent(other))
  }
  return least[0] / least[1]
}

const points = (count: number) =>
  fakeRegression({
    points: Array.from({ length: count }, (_, index) => {
      const pressure = 10 + (50 * index) / count
      return { pressure: -pressure, flow: 100 * pressure ** 0.65 * (1 + 0.01 * Math.sin(index)) }
    }),
  })

test('ten times the points take about ten times as long, not a hundred', () => {
  const [most, tenth] = [points(5000), points(500)]
  expect(
    ratio(
      () => reduce(most),
      () => reduce(tenth),
      9,
    ),
  ).toBeLessThan(30)
})

test('a typical sheet is reduced as fast as its report is copied a few times over', () => {
  const typical = fakeRegression({ air: { indoor: 70, outdoor: 30 }, building: { volume: 20_000, floorArea: 2400 } })
  const report = reduce(typical)
  expect(
    ratio(
      () => reduce(typical),
      () => JSON.parse(JSON.stringify(report)),
      500,
    ),
  ).toBeLessThan(6)
})
