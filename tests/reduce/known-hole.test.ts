/**
 * Physics of an orifice. The hand form 1.762 Cd A √ΔP (cfm, in2, Pa) and its usual constants 1.057 to 1.076 for Cd 0.60 to
 * 0.611: common practice, no source.
 */
import { expect, test } from 'vitest'
import { knownHole } from '../../lib/reduce/known-hole.ts'

const hole = { area: 1, areaUnit: 'in2', pressure: 1, flowUnit: 'cfm' } as const

const said = (measured?: number) => {
  const { check, off } = knownHole({ ...hole, area: 100, coefficient: 0.6, pressure: 50, measured })
  return `${check.outcome}: ${check.text}${off === undefined ? '' : ` ${off.toFixed(3)}`}`
}

test('the constants of the hand form', () => {
  expect(knownHole({ ...hole, coefficient: 1 }).flow).toBeCloseTo(1.762, 3)
  expect(knownHole({ ...hole, coefficient: 0.6 }).flow).toBeCloseTo(1.057, 3)
  expect(knownHole(hole).flow).toBeCloseTo(1.076, 3)
})

test('metric: 100 cm2, Cd 0.6, 50 Pa, 1.2 kg/m3, by hand: 0.6 × 0.01 × √(100/1.2) = 0.0547723 m3/s', () => {
  const metric = { area: 100, areaUnit: 'cm2', coefficient: 0.6, pressure: -50, density: 1.2 } as const
  expect(knownHole({ ...metric, flowUnit: 'L/s' }).flow).toBeCloseTo(54.7723, 4)
  expect(knownHole({ ...metric, flowUnit: 'm3/h' }).flow).toBeCloseTo(197.18, 2)
})

test('compared with what was measured', () => {
  expect([said(), said(760), said(850), said(500)]).toMatchInlineSnapshot(`
    [
      "not checked: 747 cfm must flow through it. Measure with the hole open and closed, and compare the difference.",
      "good: The measured flow is 1.7 % above what the known hole lets through: they agree. 0.017",
      "doubtful: The measured flow is 14 % above what the known hole lets through. Check range, hoses and units; if they are right, have the device calibrated. 0.137",
      "bad: The measured flow is 33 % below what the known hole lets through. Check range, hoses and units; if they are right, have the device calibrated. -0.331",
    ]
  `)
})

test('what is said of the difference never crosses the edge that the outcome stands on', () => {
  const { flow } = knownHole({ ...hole, area: 100, coefficient: 0.6, pressure: 50 })
  const at = (off: number) => said(flow * (1 + off))
  expect(at(0.0999)).toMatch(/^good: .* 10 % above/)
  expect(at(0.1)).toMatch(/^good: .* 10 % above/)
  expect(at(-0.1)).toMatch(/^good: .* 10 % below/)
  expect(at(0.1002)).toMatch(/^doubtful: .* 10\.02 % above/)
  expect(at(-0.100004)).toMatch(/^doubtful: .* 10\.0004 % below/)
  expect(at(0.2)).toMatch(/^doubtful: .* 20 % above/)
  expect(at(0.2003)).toMatch(/^bad: .* 20\.03 % above/)
  for (let step = 0; step <= 4000; step++) {
    const line = at(step / 10_000)
    const shown = Number(/is ([\d.]+) %/.exec(line)?.[1])
    const side = shown > 20 ? 'bad' : shown > 10 ? 'doubtful' : 'good'
    expect(line).toMatch(new RegExp(`^${side}:`))
  }
})

test('numbers that are none are refused', () => {
  for (const wrong of [{ area: 0 }, { pressure: 0 }, { coefficient: -1 }, { density: NaN }, { measured: Infinity }]) {
    expect(() => knownHole({ ...hole, ...wrong })).toThrow(RangeError)
  }
})
