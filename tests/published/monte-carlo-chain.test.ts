/**
 * More of the uncertainty against the method of JCGM 101:2008 (propagation of distributions), seeded: the whole chain of
 * air corrections of a one-point test (formulas of ASTM E779, Roulet and the physics of an orifice, written out again
 * here), two pressures by ASTM E1827 (from memory), and the difference of a test before and a test after.
 */
import { describe, expect, test } from 'vitest'
import { reduction } from '../../lib/engine/index.ts'
import { draws, zeroReadings } from './draws.ts'
import { figure, sheet } from './support.ts'

const DRAWS = 20_000

/** Half of the interval that holds 95 % of the draws. */
function halfOf(draw: () => number, count = DRAWS): number {
  const drawn = Array.from({ length: count }, draw).toSorted((a, b) => a - b)
  const quantile = (share: number) => drawn[Math.round(share * (count - 1))] ?? Number.NaN
  return (quantile(0.975) - quantile(0.025)) / 2
}

/** Found half-width over the simulated one. */
const ratio = ({ low = NaN, high = NaN }: { low?: number | undefined; high?: number | undefined }, simulated: number) =>
  (high - low) / 2 / simulated

// A coverage factor of 2 for 1.96 gives 2 %, the draws themselves about 1 %.
const [least, most] = [0.96, 1.06]

const within = (value: number, half: number) => ({
  value,
  unit: 'cfm',
  low: value * (1 - half),
  high: value * (1 + half),
})

const density = (celsius: number) => (1.2041 * 293) / (celsius + 273)
const viscosity = (celsius: number) => (1.458e-6 * Math.sqrt(celsius + 273.15)) / (1 + 110.4 / (celsius + 273.15))

test.each([
  [50, 20, -30],
  [30, 22, -10],
  [48, 20, 35],
])('one point at %f Pa, %f degC indoors, %f degC outdoors', (pressure, indoor, outdoor) => {
  const { normal } = draws(7)
  const simulated = halfOf(() => {
    const n = 0.65 + 0.05 * normal()
    // A single reading scatters by itself: 0.5 % of its flow, 0.2 Pa in calm weather (common practice, no source).
    const flow = 1000 * (1 + 0.025 * normal()) * (1 + 0.005 * normal())
    const dp = pressure + 0.5 * Math.max(0.01 * pressure, 0.25) * normal() + 0.2 * normal()
    const leaks = flow * Math.sqrt(1.2041 / density(indoor)) * (density(indoor) / density(outdoor))
    const standard = (viscosity(outdoor) / viscosity(20)) ** (2 * n - 1) * (density(outdoor) / 1.2041) ** (1 - n)
    return leaks * standard * (50 / dp) ** n
  })
  const units = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
  const found = figure(sheet({ units, points: [{ pressure, flow: 1000 }], air: { indoor, outdoor } }), 'flow-50')
  expect(ratio(found, simulated)).toBeGreaterThan(least)
  expect(ratio(found, simulated)).toBeLessThan(most)
})

/**
 * Errors of two pressures: that of the certificate's flow is common to every point of one range, so it shifts the flow and
 * not the exponent, and is another one in another range; that of the gauge is common with its sign; each reading scatters by
 * itself, as the readings of the baseline show it; that of the baseline is common. ISO 9972 has them as systematic and
 * random parts (from memory); JCGM 100, 5.2.2, for what is common.
 */
describe.each([1, 2])('two pressures, %i range(s)', (count) => {
  const zero = zeroReadings([-0.9, -0.5], [0.3, -0.5, 0.2, 0.4, -0.1, -0.3])
  const ranges = { wide: { coefficient: 100, exponent: 0.5 }, narrow: { coefficient: 40, exponent: 0.5 } }
  const [q1, q2] = [1000, 406]
  const points = [
    { pressure: 50 + zero.mean, devicePressure: (q1 / 100) ** 2, range: 'wide' },
    {
      pressure: 12.5 + zero.mean,
      devicePressure: (q2 / (count === 1 ? 100 : 40)) ** 2,
      range: count === 1 ? 'wide' : 'narrow',
    },
  ]
  const { baseline } = zero
  const house = sheet({ procedure: 'two-point', direction: 'pressurize', points, baseline, device: { ranges } })
  const typed = Math.log(q1 / q2) / Math.log(4)

  test.each(['flow-50', 'flow-25', 'flow-4', 'leakage-exponent'])('%s', (id) => {
    const { uniform, normal, scatter } = draws(11)
    const read = () => {
      const s = scatter(zero.scatter, zero.freedom)
      const device = 0.025 * normal()
      const other = count === 1 ? device : 0.025 * normal()
      const gauge = normal() / 2
      const common = s * zero.meanShare * normal() + zero.apart * (uniform() - 0.5)
      const flow = (q: number, error: number) => q * (1 + error) * (1 + Math.max(0.005, (typed * s) / 50) * normal())
      const pressure = (p: number) => p + Math.max(0.01 * p, 0.25) * gauge + common + s * normal()
      const [p1, p2] = [pressure(50), pressure(12.5)]
      const one = flow(q1, device)
      return { n: Math.log(one / flow(q2, other)) / Math.log(p1 / p2), one, p1 }
    }
    const pressure = Number(/\d+$/.exec(id)?.[0])
    const simulated = halfOf(() => {
      const { n, one, p1 } = read()
      return id === 'leakage-exponent' ? n : one * (pressure / p1) ** n
    }, 100_000)
    const found = figure(house, id)
    expect(ratio(found, simulated)).toBeGreaterThan(least)
    expect(ratio(found, simulated)).toBeLessThan(most)
  })
})

test.each([0, 0.05])('before and after, %f of either shared', (shared) => {
  const { normal } = draws(13)
  const [b, a, wide, narrow] = [1445, 754, 0.08, 0.06]
  const own = (half: number) => Math.sqrt(half ** 2 - shared ** 2) / 2
  const pair = () => {
    const common = 1 + (shared / 2) * normal()
    return [b * common * (1 + own(wide) * normal()), a * common * (1 + own(narrow) * normal())] as const
  }
  const found = reduction(within(b, wide), within(a, narrow), { shared })
  const absolute = halfOf(() => {
    const [one, other] = pair()
    return one - other
  })
  const percent = halfOf(() => {
    const [one, other] = pair()
    return 100 * (1 - other / one)
  })
  for (const closeness of [ratio(found.absolute, absolute), ratio(found.percent, percent)]) {
    expect(closeness).toBeGreaterThan(least)
    expect(closeness).toBeLessThan(most)
  }
})
