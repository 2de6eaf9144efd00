/** The check of the device against a hole of known area. */
import { expect, test } from 'vitest'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { said } from './said.ts'
import { fakeSheet } from './sheets.ts'

const ofHole = (flow: number, overrides: Partial<Sheet> = {}) =>
  said('known-hole', fakeSheet({ fieldCheck: { area: 100, pressure: -50, flow }, ...overrides }))

/** 1.762 × 0.611 × 100 in2 × √50 Pa = 761.3 cfm. */
test('a flow more than a tenth off what a known hole lets through is doubtful', () => {
  expect(said('known-hole', fakeSheet())).toMatchInlineSnapshot(
    `"not checked: No field check typed. Open a sharp-edged hole of known area, and compare the flow that it adds with what must pass it."`,
  )
  expect(ofHole(761)).toMatchInlineSnapshot(
    `"good: The measured flow is 0.023 % below what the known hole lets through: they agree."`,
  )
  expect(ofHole(837)).toMatch(/^good/)
  expect(ofHole(838)).toMatchInlineSnapshot(
    `"doubtful: The measured flow is 10.1 % above what the known hole lets through. Check range, hoses and units; if they are right, have the device calibrated."`,
  )
  expect(ofHole(686)).toMatch(/^good/)
  expect(ofHole(685)).toMatchInlineSnapshot(
    `"doubtful: The measured flow is 10.01 % below what the known hole lets through. Check range, hoses and units; if they are right, have the device calibrated."`,
  )
  expect(ofHole(610)).toMatch(/^doubtful/)
  expect(ofHole(608)).toMatch(/^bad/)
})

test('known hole: the largest flow and the smallest hole that a sheet takes are compared too', () => {
  expect(ofHole(1e9)).toMatch(/^bad/)
  expect(ofHole(1e-9)).toMatch(/^bad/)
  const tiny = { area: 1e-9, pressure: 1e-9, flow: 1e9, discharge: 0.3 }
  expect(said('known-hole', fakeSheet({ fieldCheck: tiny }))).toMatch(/^bad/)
})

test('known hole: a flow at the density of the air is compared at that density, one shown at the calibration’s at that', () => {
  const high = { air: { indoor: 68, outdoor: 68, elevation: 8000 } }
  expect(ofHole(761, { ...high, flowBasis: 'indicated' })).toMatch(/^good.* 0\.0/)
  // At 8,000 ft the air is lighter: √(1.2041 / 0.8990) = 1.157 times as much passes.
  expect(ofHole(761 * 1.157, { ...high, flowBasis: 'actual' })).toMatch(/^good.* 0\.0/)
})

/**
 * Conservation of mass: through the hole goes the air of the leaks, Cd A √(2 ΔP ρ leak) kg/s, and the device moves as much.
 * 20 °C in the house, 1.2041 kg/m3, and −20 °C outdoors, 1.2041 × 293 / 253 = 1.3945 kg/m3.
 */
test('known hole: in the cold the hole lets other air through than the device', () => {
  const air = { indoor: 68, outdoor: -4 }
  // √(1.3945 / 1.2041) = 1.0762 times the 761.3 cfm of air at 20 °C; indoor air in the device is at its calibration.
  expect(ofHole(819.3, { air })).toMatch(/^good.* 0\.0/)
  expect(ofHole(819.3, { air, flowBasis: 'actual' })).toMatch(/^good.* 0\.0/)
  // Indoor air leaves through the hole, outdoor air goes through the device: 1.2041 / 1.3945 as much, shown × √(1.3945 / 1.2041).
  const blown = { air, direction: 'pressurize', points: [{ pressure: 50, flow: 1000 }] } as const
  expect(ofHole(657.4, { ...blown, points: [...blown.points], flowBasis: 'actual' })).toMatch(/^good.* 0\.0/)
  expect(ofHole(707.4, { ...blown, points: [...blown.points] })).toMatch(/^good.* 0\.0/)
})
