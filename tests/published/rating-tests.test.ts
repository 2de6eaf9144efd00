/**
 * The chain from a house test to natural infiltration of ANSI/RESNET/ICC 301 and ASHRAE 62.2, against printed values.
 *
 * National Renewable Energy Laboratory, open reference tests of home-energy rating (tolerance there 1 %):
 * - a specific leakage area of 0.00036 with 8 ft ceilings is 7.09 ACH50;
 * - 2,400 ft2, 20,400 ft3, 17 ft high, 3 bedrooms, 3 ACH50, balanced fan: 60.1 cfm;
 * - 2,700 ft2, 21,600 ft3, 9.75 ft high, specific leakage area 0.00036: fan 27.0 cfm.
 * Intermediate values of the second were worked out apart from the engine; shielding factor 0.59 (Denver). The third is
 * printed without bedrooms and shielding factor: those of the second are taken.
 */
import { expect, test } from 'vitest'
import { reduce } from '../../lib/engine/index.ts'
import { figure, off, sheet } from './support.ts'

const cfm50 = (ach50: number, volume: number) => (ach50 * volume) / 60

test('printed: a specific leakage area of 0.00036 with 8 ft ceilings is 7.09 ACH50', () => {
  const house = sheet({
    points: [{ pressure: 50, flow: cfm50(7.09, 2000 * 8) }],
    building: { volume: 2000 * 8, floorArea: 2000 },
  })
  expect(off(figure(house, 'air-changes-50').value, 7.09)).toBeLessThan(1e-12)
  expect(off(figure(house, 'specific-leakage-area').value, 0.00036)).toBeLessThan(0.01)
})

const house = sheet({
  points: [{ pressure: 50, flow: cfm50(3, 20400) }],
  building: { volume: 20400, floorArea: 2400, height: 17, bedrooms: 3 },
  weatherShieldingFactor: 0.59,
})

/** The worked values stand at 1.2 kg/m3; the engine's areas stand at the 1.2041 kg/m3 of 20 degC and 101.325 kPa. */
const atWorkedDensity = (area: number) => area * Math.sqrt(1.2 / 1.2041)

test('worked: 2,400 ft2 at 3 ACH50: leakage area, normalized leakage, infiltration, ventilation', () => {
  expect(off(atWorkedDensity(figure(house, 'specific-leakage-area').value), 1.61922e-4)).toBeLessThan(2e-5)
  expect(off(atWorkedDensity(figure(house, 'normalized-leakage').value), 0.21673)).toBeLessThan(3e-5)
  // Worked with the metric form of ASHRAE 62.2, NL wsf A / 1.44 (L/s, m2); the 7.3 of the cfm form is rounded by 0.2 %.
  expect(off(atWorkedDensity(figure(house, 'infiltration-credit').value), 41.952)).toBeLessThan(0.0025)
  expect(off(figure(house, 'ventilation-required').value, 102)).toBeLessThan(1e-12)
})

test('printed: its balanced fan moves 60.1 cfm, what is required less the infiltration', () => {
  expect(off(figure(house, 'fan-required').value, 60.1)).toBeLessThan(0.01)
})

test('natural figures need their inputs, and are left out without them', () => {
  const { figures } = reduce(sheet({ points: [{ pressure: 50, flow: 1000 }] }))
  for (const id of ['specific-leakage-area', 'normalized-leakage', 'infiltration-credit', 'ventilation-required']) {
    expect(figures).not.toHaveProperty(id)
  }
})

test('printed: 2,700 ft2, 9.75 ft high, specific leakage area 0.00036: the balanced fan moves 27.0 cfm', () => {
  const building = { volume: 21600, floorArea: 2700, height: 9.75, bedrooms: 3 }
  const at = (flow: number) => sheet({ points: [{ pressure: 50, flow }], building, weatherShieldingFactor: 0.59 })
  // The printed input is the leakage area; the flow that has it follows in proportion.
  const leaky = at(0.00036 / figure(at(1), 'specific-leakage-area').value)
  expect(off(figure(leaky, 'specific-leakage-area').value, 0.00036)).toBeLessThan(1e-12)
  expect(off(figure(leaky, 'fan-required').value, 27.0)).toBeLessThan(0.01)
})
