/**
 * What testers carry in the head. Half the pressure leaves 0.5^n of the flow: 0.707 (n 0.5, an orifice), 0.637 (0.65),
 * 0.616 (0.7), 0.5 (n 1, a long crack), by the power law itself. A sharp-edged hole passes 1.762 Cd A √dP (cfm, in2, Pa), an
 * orifice at 1.2041 kg/m3; 1.057 and 1.076 per in2 with 0.60 and 0.611 (common practice, no source).
 */
import { expect, test } from 'vitest'
import { knownHole, reduce } from '../../lib/engine/index.ts'
import { printed, sheet } from './support.ts'

test.each([
  [0.5, '0.707'],
  [0.65, '0.637'],
  [0.7, '0.616'],
  [1, '0.5'],
])('n %f: half the pressure leaves %s of the flow', (n, ratio) => {
  const points = [60, 50, 40, 30, 20, 10].map((pressure) => ({ pressure: -pressure, flow: 80 * pressure ** n }))
  const { figures, checks } = reduce(sheet({ procedure: 'astm-e779', points }))
  expect(figures['flow-25']!.value / figures['flow-50']!.value).toBeCloseTo(...printed(ratio))
  const check = checks.find(({ id }) => id === 'half-pressure')
  expect(check?.outcome).toBe('good')
  expect(Number(check?.found)).toBeCloseTo(...printed(ratio))
})

test.each([
  [1, '1.762'],
  [0.6, '1.057'],
  [0.611, '1.076'],
])('a discharge coefficient of %f: %s cfm for each in2 and √Pa', (coefficient, constant) => {
  const hole = { area: 100, areaUnit: 'in2', pressure: 25, flowUnit: 'cfm', coefficient } as const
  expect(knownHole(hole).flow / 100 / 5).toBeCloseTo(...printed(constant))
})
