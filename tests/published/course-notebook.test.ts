/**
 * INSA Lyon, course notebooks "dm4bem" (dynamic models for building energy management), exercise on the fan
 * pressurization of a building: six readings, with the fit printed in the notebook. "Printed" below is from there; the
 * exponent and the coefficient are printed with their standard errors.
 *
 * "Worked" values were worked out apart from the engine, from ASTM E779 Annex A1 and ISO 9972 Annex C (limits), ASTM E779
 * (effective leakage area) and CAN/CGSB-149.10 (equivalent leakage area), from the same six readings.
 */
import { expect, test } from 'vitest'
import { reduce } from '../../lib/engine/index.ts'
import { errorAt, fitLine } from '../../lib/reduce/fit.ts'
import { studentT } from '../../lib/reduce/student-t.ts'
import { figure, metric, off, printed, sheet } from './support.ts'

const pressures = [10, 20, 30, 40, 50, 60]
const flows = [237, 364, 444, 625, 688, 704]
const readings = sheet({
  procedure: 'iso-9972',
  units: metric,
  points: pressures.map((pressure, index) => ({ pressure, flow: flows[index] ?? Number.NaN })),
})
const alone = { instrumentUncertainty: false }
const { fit } = reduce(readings, alone)

test('printed: exponent, coefficient, correlation', () => {
  expect(fit?.exponent).toBeCloseTo(...printed('0.6434'))
  expect(fit?.coefficient).toBeCloseTo(...printed('53.3956'))
  expect(fit?.correlation).toBeCloseTo(...printed('0.9815'))
  expect(fit?.points).toBe(6)
})

test('printed: standard errors of exponent and coefficient', () => {
  const line = fitLine(pressures.map(Math.log), flows.map(Math.log))
  expect(line.slopeError).toBeCloseTo(...printed('0.0442'))
  expect(Math.exp(line.intercept) * line.interceptError).toBeCloseTo(...printed('8.1475'))
  expect(errorAt(line, 0)).toBeCloseTo(line.interceptError, 12)
})

test('printed: flow and leakage area at 10 Pa, discharge coefficient 1, 1.2 kg/m3', () => {
  expect(figure(readings, 'flow-10').value).toBeCloseTo(...printed('234.9'))
  // The engine's area has a discharge coefficient of 0.611 and 1.2041 kg/m3.
  const asPrinted = figure(readings, 'equivalent-leakage-area').value * 0.611 * Math.sqrt(1.2 / 1.2041)
  expect(asPrinted).toBeCloseTo(...printed('159.9'))
})

test('worked: Student t and the limits of exponent and coefficient', () => {
  expect(studentT(4)).toBeCloseTo(...printed('2.7764'))
  expect(fit?.exponentLow).toBeCloseTo(...printed('0.5207'))
  expect(fit?.exponentHigh).toBeCloseTo(...printed('0.7662'))
  expect(fit?.coefficientLow).toBeCloseTo(...printed('34.96'))
  expect(fit?.coefficientHigh).toBeCloseTo(...printed('81.56'))
})

test.each([
  ['flow-50', '661.77', '600.40', '729.41'],
  ['flow-10', '234.94', '201.47', '273.96'],
  ['flow-4', '130.29', '100.67', '168.62'],
  ['flow-75', '859.04', '750.60', '983.14'],
])('worked: %s with its 95 %% limits', (id, value, low, high) => {
  const found = figure(readings, id, alone)
  expect(found.value).toBeCloseTo(...printed(value))
  expect(found.low).toBeCloseTo(...printed(low))
  expect(found.high).toBeCloseTo(...printed(high))
})

test('worked: leakage areas in cm2 and in2', () => {
  expect(figure(readings, 'effective-leakage-area').value).toBeCloseTo(...printed('140.41'))
  expect(figure(readings, 'equivalent-leakage-area').value).toBeCloseTo(...printed('262.08'))
  const inches = { ...readings, units: { ...metric, length: 'ft' as const } }
  expect(figure(inches, 'effective-leakage-area').value).toBeCloseTo(...printed('21.763'))
  expect(figure(inches, 'equivalent-leakage-area').value).toBeCloseTo(...printed('40.622'))
})

/**
 * With every part the scatter is no more that of the points about the line alone, the same at each pressure: baseline and
 * points show it together, and a reading at a low pressure is taken to scatter more. So it is an instrument without errors
 * that the usual one is held against.
 */
test('the instrument’s part only widens the limits, and leaves the value', () => {
  const without = figure(
    { ...readings, instrument: { pressurePercent: 0, pressureFloor: 0, flowPercent: 0 } },
    'flow-50',
  )
  const withIt = figure(readings, 'flow-50')
  expect(off(withIt.value, without.value)).toBeLessThan(1e-15)
  expect(off(withIt.value, figure(readings, 'flow-50', alone).value)).toBeLessThan(1e-15)
  expect(withIt.low).toBeLessThan(without.low ?? Number.NaN)
  expect(withIt.high).toBeGreaterThan(without.high ?? Number.NaN)
})
