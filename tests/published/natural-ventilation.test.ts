/**
 * National Renewable Energy Laboratory, standard work specifications: factors of 1, 1.5, 2, 2.5 and 3 storeys in the
 * normalized leakage are 1.00, 1.18, 1.32, 1.44 and 1.55, the number of storeys to the power 0.4.
 *
 * ASHRAE 62.2 (from memory): what infiltrates counts as 0.052 × Q50 × wsf × (H / 8.2 ft)^0.4, in cfm and feet.
 */
import { describe, expect, test } from 'vitest'
import { figure, off, printed, sheet } from './support.ts'

const house = (height: number, flow = 1000) =>
  sheet({
    points: [{ pressure: 50, flow }],
    building: { volume: 20_000, floorArea: 2400, height },
    weatherShieldingFactor: 0.59,
  })

describe('printed: factor of the storeys', () => {
  const one = figure(house(8.202), 'normalized-leakage').value
  test.each([
    [1, '1.00'],
    [1.5, '1.18'],
    [2, '1.32'],
    [2.5, '1.44'],
    [3, '1.55'],
  ])('%f storeys of 8.202 ft: %s', (storeys, factor) => {
    expect(figure(house(8.202 * storeys), 'normalized-leakage').value / one).toBeCloseTo(...printed(factor))
  })
})

// The constant is rounded to two digits, and so stands within 1 % of the chain over leakage area and normalized leakage.
test.each([
  [8.2, 1000],
  [17, 1020],
  [9.75, 2500],
])('the short form at %f ft and %f cfm50, within 1 %%', (height, flow) => {
  const short = 0.052 * flow * 0.59 * (height / 8.2) ** 0.4
  expect(off(figure(house(height, flow), 'infiltration-credit').value, short)).toBeLessThan(0.01)
})
