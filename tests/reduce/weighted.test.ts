/** The weighted line as a test's result, and beside the one of least squares. */
import { expect, test } from 'vitest'
import { curveOf } from '../../lib/reduce/curve.ts'
import { reduce, workingOf } from '../../lib/reduce/reduce.ts'
import { wlocLine } from '../../lib/reduce/wloc.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { fakeRegression } from './sheets.ts'

/** A scatter of 2 Pa: the lowest point reads 12 Pa where 15 stood. */
const windy: Partial<Sheet> = { pressureScatter: 2 }
const pressures = [60, 50, 40, 30, 20, 12]
const flows = [60, 50, 40, 30, 20, 15].map((pressure) => 80 * pressure ** 0.65)
const points = pressures.map((pressure, index) => ({ pressure: -pressure, flow: flows[index]! }))

test('it is the line of organic correlation with the weights that the scatter gives, worked out apart', () => {
  const sheet = fakeRegression({ ...windy, points, line: 'weighted' })
  const report = reduce(sheet)
  const n = reduce({ ...sheet, line: 'least-squares' }).fit!.exponent
  const line = wlocLine(
    pressures.map((pressure, index) => ({
      x: Math.log(pressure),
      y: Math.log(flows[index]!),
      ux: 2 / pressure,
      uy: (n * 2) / 50,
    })),
  )
  expect(report.figures['leakage-exponent']?.value).toBeCloseTo(line.slope, 12)
  expect(report.figures['flow-50']?.value).toBeCloseTo(Math.exp(line.intercept) * 50 ** line.slope, 6)
  expect(report.fit?.exponent).toBe(line.slope)
})

const n = (line: Sheet['line']) => reduce(fakeRegression({ ...windy, points, line })).figures['leakage-exponent']!.value

test('a low point in wind pulls it less than least squares', () => {
  expect(Math.abs(n('weighted') - 0.65)).toBeLessThan(Math.abs(n('least-squares') - 0.65) / 1.5)
})

const steps = (one: Sheet) => workingOf(reduce(one), 'flow-50').map(({ step }) => step)

test('least squares stays the result where nothing is chosen, with the other line beside it in the working', () => {
  const sheet = fakeRegression(windy)
  expect(reduce(sheet).figures['flow-50']).toEqual(reduce({ ...sheet, line: 'least-squares' }).figures['flow-50'])
  expect(steps(sheet)).toContain('Weighted line, to compare')
  expect(steps({ ...sheet, line: 'weighted' })).toContain('Weighted line, the result')
})

const said = (sheet: Sheet) => reduce(sheet).checks.find(({ id }) => id === 'weighted-line')

test('the check tells when the two lie further apart than the limits', () => {
  expect(said(fakeRegression())?.outcome).toBe('good')
  // Calm, but one low point that lies far off: each line has it its own way.
  const fine = { pressurePercent: 0.5, pressureFloor: 0.1, flowPercent: 1 }
  const off = Array.from({ length: 40 }, (_, index) => ({ pressure: -(60 - index), flow: 80 * (60 - index) ** 0.65 }))
  const low = Array.from({ length: 12 }, () => ({ pressure: -6, flow: 80 * 6 ** 0.65 * 1.25 }))
  const apart = fakeRegression({ points: [...off, ...low], instrument: fine, pressureScatter: 1 })
  expect(said(apart)?.outcome).toBe('doubtful')
  // Then the plot draws it too.
  expect(curveOf(apart).other).toBeDefined()
  expect(curveOf(fakeRegression()).other).toBeUndefined()
})
