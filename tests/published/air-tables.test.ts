/**
 * Density of dry air at 101.325 kPa, as printed in any engineering handbook's table of the properties of air: 0 degC
 * 1.2922, 20 degC 1.2041, 37 degC 1.1381 kg/m3.
 *
 * Density by elevation and the one-point factors were worked out apart from the engine: density in the form of ASTM
 * E779's appendix (from memory), viscosity by C.-A. Roulet, "Ventilation and Airflow in Buildings", equation 4.17, mass
 * balance by ATTMA TSL Appendix A equations 5 and 6, standard conditions by Roulet equation 4.15.
 */
import { describe, expect, test } from 'vitest'
import { densityAt, densityByBarometer, referenceDensity, viscosity } from '../../lib/reduce/air.ts'
import { convert } from '../../lib/units/convert.ts'
import { figure, off, printed, sheet } from './support.ts'

test.each([
  [0, 1.2922],
  [20, 1.2041],
  [37, 1.1381],
])('printed: density at %f degC is %f kg/m3', (celsius, density) => {
  // The appendix form counts kelvins from 273, the gas law from 273.15; the table is met to 1 in 10,000 by both.
  expect(off(densityAt(celsius, 0), density)).toBeLessThan(1e-4)
  expect(off(densityByBarometer(celsius, 101325), density)).toBeLessThan(1e-4)
})

test.each([
  [1000, '1.1619', 1],
  [3000, '1.0812', 1],
  [5000, '1.0050', 1],
  [8000, '0.8990', 1],
])('worked: density at 20 degC and %i ft is %s kg/m3', (feet, worked) => {
  expect(densityAt(20, convert(feet, 'ft', 'm'))).toBeCloseTo(...printed(worked))
})

test('worked: at 5,000 ft a device shows 1/1.0946 of the actual flow', () => {
  expect(Math.sqrt(referenceDensity / densityAt(20, convert(5000, 'ft', 'm')))).toBeCloseTo(...printed('1.0946'))
})

/** Roulet, equation 4.17, at 20 degC: 1.813e-5 Pa.s. */
test('viscosity at 20 degC is 1.813e-5 Pa.s', () => {
  expect(viscosity(20) * 1e5).toBeCloseTo(...printed('1.813'))
})

const indoor = [50, 60, 70, 80, 90]
const factors = [
  ['pressurize', 0, ['1.039', '1.057', '1.075', '1.093', '1.111']],
  ['pressurize', 40, ['0.997', '1.014', '1.031', '1.048', '1.065']],
  ['pressurize', 100, ['0.942', '0.958', '0.974', '0.990', '1.007']],
  ['depressurize', 0, ['0.900', '0.892', '0.883', '0.875', '0.867']],
  ['depressurize', 40, ['0.970', '0.960', '0.951', '0.942', '0.934']],
  ['depressurize', 100, ['1.072', '1.061', '1.051', '1.041', '1.032']],
] as const

describe('worked: one-point factor at n 0.65 (device, leak density, viscosity, standard conditions together)', () => {
  for (const [direction, outdoor, row] of factors) {
    test.each(indoor.map((inside, index) => [inside, row[index] ?? '']))(
      `${direction}, outdoor ${outdoor} F, indoor %i F: %s`,
      (inside, factor) => {
        const given = { direction, points: [{ pressure: 50, flow: 1000 }], air: { indoor: inside, outdoor } }
        expect(figure(sheet(given), 'flow-50').value / 1000).toBeCloseTo(...printed(factor))
      },
    )
  }
})

test('a house at 20 degC inside and out, at sea level, has a factor of 1', () => {
  const given = { points: [{ pressure: 50, flow: 1000 }], air: { indoor: 68, outdoor: 68 } }
  expect(figure(sheet(given), 'flow-50').value).toBeCloseTo(1000, 9)
})
