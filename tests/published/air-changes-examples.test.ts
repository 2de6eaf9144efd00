/**
 * Published small examples.
 *
 * A published example of a house test (its publisher is not recorded here): 433 cfm at 50 Pa in 8,726 ft3 is 2.98 air changes per hour at 50 Pa; divided
 * by a factor N of 16.7 that is 0.18 natural air changes per hour.
 */
import { expect, test } from 'vitest'
import { figure, off, printed, sheet } from './support.ts'

test('433 cfm at 50 Pa in 8,726 ft3: 2.98 ACH50, and 0.18 with N = 16.7', () => {
  const house = sheet({ points: [{ pressure: 50, flow: 433 }], building: { volume: 8726 } })
  const found = figure(house, 'air-changes-50').value
  expect(found).toBeCloseTo(...printed('2.98'))
  expect(found / 16.7).toBeCloseTo(...printed('0.18'))
})

/**
 * U.S. Environmental Protection Agency, worked example of a leakage limit (its title is not recorded here): a 1,000 ft2 apartment
 * with 1,000 ft2 of walls (3,000 ft2 on six sides) may leak 900 cfm at 50 Pa at 0.30 cfm50/ft2.
 */
test('900 cfm at 50 Pa over six sides of 3,000 ft2 is 0.30 cfm50/ft2', () => {
  const apartment = sheet({ points: [{ pressure: 50, flow: 900 }], building: { enclosureArea: 1000 + 1000 + 1000 } })
  expect(off(figure(apartment, 'flow-50-per-enclosure-area').value, 0.3)).toBeLessThan(1e-12)
})

/** ACH50 / 20: common practice, no source. */
test('the rule of thumb is a twentieth of ACH50 and says that it is one', () => {
  const house = sheet({ points: [{ pressure: 50, flow: 433 }], building: { volume: 8726 } })
  const natural = figure(house, 'natural-air-changes')
  expect(off(natural.value, figure(house, 'air-changes-50').value / 20)).toBeLessThan(1e-14)
  expect(natural.note).toMatch(/rule of thumb/i)
})
