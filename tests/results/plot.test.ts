import { expect, test } from 'vitest'
import { reduceTest } from '../../lib/job/reduce.ts'
import { knownTests, worksOf } from '../../lib/job/together.ts'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { reportOf } from '../../lib/report/content.ts'
import { barsBox, barsOf, nameLines } from '../../lib/results/plot/bars.ts'
import { residualBox, residualsOf } from '../../lib/results/plot/residuals.ts'
import { zeroFlowOf } from '../../lib/results/plot/zero-flow.ts'
import { stepped } from '../../lib/view/calculator/stepped.ts'
import { unitsByPlace } from '../../lib/job/units-by-place.ts'
import { devices, eightPoints } from '../report/report-fixtures.ts'

const leftOut = () => {
  const { job, test: one } = eightPoints()
  const points = one.sheet.points.map((point, row) => (row === 2 ? { ...point, leftOut: 'a door slammed' } : point))
  const changed = { ...one, sheet: { ...one.sheet, points } }
  return { job: { ...job, tests: [changed] }, test: changed }
}

test('a point left out is drawn with its own row, in the plot and under it', () => {
  const { job, test: one } = leftOut()
  const { plot, readings, checks } = reportOf(job, one, devices, undefined)
  expect(plot!.marks.map(({ row, left }) => (left ? -row : row))).toEqual([0, 1, -2, 3, 4, 5, 6, 7])
  const { marks, zero } = residualsOf(plot!.marks)
  for (const [at, mark] of plot!.marks.entries()) {
    expect(marks[at]!.at[0]).toBe(mark.at[0])
    expect(marks[at]!.at[1] < zero).toBe(mark.off > 0)
    expect(marks[at]!.at[1]).toBeGreaterThanOrEqual(residualBox.top)
    expect(marks[at]!.at[1]).toBeLessThanOrEqual(residualBox.bottom)
  }
  expect(readings.rows.map(([name]) => name)).toEqual(['1', '2', '3 ×', '4', '5', '6', '7', '8'])
  expect(readings.foot).toContain('× Point 3 is left out of the figures: a door slammed.')
  expect(checks.find(({ id }) => id === 'left-out')?.text).toContain('a door slammed')
})

test('the baseline stands on an axis of its own, with its mean', () => {
  const { sheet } = reduceTest(eightPoints().job, eightPoints().test, devices)
  const zero = zeroFlowOf(sheet!)!
  expect(zero.words).toBe('Baseline in Pa: before −1.1, after −0.9, mean −1.0.')
  expect(zero.mean).toBeCloseTo((zero.marks[0]!.x + zero.marks[1]!.x) / 2, 6)
  expect(zeroFlowOf({ baseline: { before: [], after: [] } })).toBeUndefined()
})

test('the bars before and after are as long as the flows they stand for', () => {
  const work = worksOf(knownTests(demoJob(), [demoDevice()]))[0]!
  const bars = barsOf(work)!
  const [before, after] = bars.bars
  const long = ({ to }: typeof before) => to - barsBox.left
  expect(long(after) / long(before)).toBeCloseTo(work.is.value / work.was.value, 10)
  expect(bars.change).toBe('down 47.8 ± 1.8 %')
  expect(bars.words).toMatch(/^CFM50: before 1[\d,]+ cfm, after 754 cfm, down 47\.8/)
  expect(barsOf(undefined)).toBeUndefined()
})

test('names beside the bars are whole, in two lines when long, and the bars begin right of them', () => {
  expect(nameLines('before, both directions')).toEqual(['before, both directions'])
  expect(nameLines('antes de sellar el ático y la rampa')).toEqual(['antes de sellar el ático', 'y la rampa'])
  const endless = nameLines('a test before the work with every door of the house open but one')
  expect(endless).toHaveLength(2)
  expect(endless[1]).toMatch(/…$/)
  expect(nameLines('x'.repeat(60)).every((line) => line.length <= 24)).toBe(true)
  const work = worksOf(knownTests(demoJob(), [demoDevice()]))[0]!
  const { left, bars } = barsOf({ ...work, before: 'before, both directions' })!
  expect(left).toBeGreaterThan(barsBox.left)
  expect((bars[1].to - left) / (bars[0].to - left)).toBeCloseTo(work.is.value / work.was.value, 10)
})

test('a step of a pascal keeps the decimals that were typed, and leaves words alone', () => {
  expect([stepped('-51.3', 1), stepped('-51.3', -1), stepped('50', 1), stepped('', -1), stepped('fifty', 1)]).toEqual([
    '-50.3',
    '-52.3',
    '51',
    '-1',
    'fifty',
  ])
})

test('units are those of the place', () => {
  expect(['en-US', 'en', 'es-MX', 'fr-CA', 'en-GB'].map((language) => unitsByPlace(language).flow)).toEqual([
    'cfm',
    'cfm',
    'm3/h',
    'L/s',
    'm3/h',
  ])
})
