/**
 * One-point arithmetic, worked out by hand calculator from `Q50 = Q (50/dP)^n` and the area formulas of ASTM E779 (4 Pa,
 * discharge coefficient 1) and CAN/CGSB-149.10 (10 Pa, 0.611). The per-cfm50 areas are the constants 0.0549 and 0.1032 in2
 * in use in the trade (ANSI 301 gives the first).
 */
import { describe, expect, test } from 'vitest'
import { figure, off, printed, sheet } from './support.ts'

describe('houses, n 0.65', () => {
  test.each([
    [1000, 45, '1070.9'],
    [1000, 30, '1393.8'],
    [1000, 25, '1569.2'],
    [2000, 20, '3628.2'],
  ])('%f cfm at %f Pa is %s cfm at 50 Pa', (flow, pressure, expected) => {
    const house = sheet({ points: [{ pressure, flow }] })
    expect(figure(house, 'flow-50').value).toBeCloseTo(...printed(expected))
    expect(figure(house, 'flow-50-as-read').value).toBeCloseTo(...printed(expected))
  })

  test('CFM75 over CFM50 is 1.3015', () => {
    const house = sheet({ points: [{ pressure: 50, flow: 1000 }] })
    expect(figure(house, 'flow-75').value / 1000).toBeCloseTo(...printed('1.3015'))
  })

  test('one cfm50 is 0.05496 in2 at 4 Pa and 0.10320 in2 at 10 Pa, 1.88 times as much', () => {
    const house = sheet({ points: [{ pressure: 50, flow: 1 }] })
    const effective = figure(house, 'effective-leakage-area').value
    const equivalent = figure(house, 'equivalent-leakage-area').value
    expect(effective).toBeCloseTo(...printed('0.05496'))
    expect(equivalent).toBeCloseTo(...printed('0.10320'))
    expect(equivalent / effective).toBeCloseTo(...printed('1.88'))
  })

  test('a baseline of -2 Pa, read -50 Pa while depressurizing, leaves 48 Pa', () => {
    const house = sheet({ points: [{ pressure: -50, flow: 1000 }], baseline: { before: [-1], after: [-3] } })
    expect(off(figure(house, 'flow-50').value, 1000 * (50 / 48) ** 0.65)).toBeLessThan(1e-13)
  })
})

describe('ducts, n 0.6', () => {
  test.each([
    [20, '114.3'],
    [50, '65.98'],
  ])('100 cfm at %f Pa is %s cfm at 25 Pa', (pressure, expected) => {
    const ducts = sheet({ subject: 'ducts', direction: 'pressurize', points: [{ pressure, flow: 100 }] })
    expect(figure(ducts, 'duct-flow-25').value).toBeCloseTo(...printed(expected))
  })

  /** IECC duct limits are written per 100 ft2 of conditioned floor area. */
  test('80 cfm at 25 Pa for 2,000 ft2 and an air handler of 800 cfm is 4 cfm25 per 100 ft2 and 10 %', () => {
    const ducts = sheet({
      subject: 'ducts',
      direction: 'pressurize',
      points: [{ pressure: 25, flow: 80 }],
      building: { floorArea: 2000 },
      duct: { leakage: 'total', airHandlerFlow: 800 },
    })
    expect(off(figure(ducts, 'duct-flow-25-per-floor-area').value, 4)).toBeLessThan(1e-13)
    expect(off(figure(ducts, 'duct-share-of-air-handler').value, 10)).toBeLessThan(1e-13)
    expect(figure(ducts, 'duct-share-of-air-handler').unit).toBe('%')
  })
})
