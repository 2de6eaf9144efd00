/**
 * More of the uncertainty against the method of JCGM 101:2008 (propagation of distributions), seeded: the whole chain of
 * air corrections of a one-point test (formulas of ASTM E779, Roulet and the physics of an orifice, written out again
 * here), two pressures by ASTM E1827 (from memory), and the difference of a test before and a test after.
 */
import { expect, test } from 'vitest'
import { reduction } from '../../lib/engine/index.ts'
import { figure, sheet } from './support.ts'

const DRAWS = 20_000

/** Mulberry32, a public-domain generator of 32-bit state, through Box and Muller's transform. */
function normals(seed: number): () => number {
  const uniform = () => {
    seed = (seed + 0x6d2b79f5) | 0
    let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
}

/** Half of the interval that holds 95 % of the draws. */
function halfOf(draw: () => number): number {
  const drawn = Array.from({ length: DRAWS }, draw).toSorted((a, b) => a - b)
  const quantile = (share: number) => drawn[Math.round(share * (DRAWS - 1))] ?? Number.NaN
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
  const normal = normals(7)
  const simulated = halfOf(() => {
    const n = 0.65 + 0.05 * normal()
    const flow = 1000 * (1 + 0.025 * normal())
    const dp = pressure + 0.5 * Math.max(0.01 * pressure, 0.25) * normal()
    const leaks = flow * Math.sqrt(1.2041 / density(indoor)) * (density(indoor) / density(outdoor))
    const standard = (viscosity(outdoor) / viscosity(20)) ** (2 * n - 1) * (density(outdoor) / 1.2041) ** (1 - n)
    return leaks * standard * (50 / dp) ** n
  })
  const units = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
  const found = figure(sheet({ units, points: [{ pressure, flow: 1000 }], air: { indoor, outdoor } }), 'flow-50')
  expect(ratio(found, simulated)).toBeGreaterThan(least)
  expect(ratio(found, simulated)).toBeLessThan(most)
})

test.each(['flow-50', 'flow-25', 'flow-4', 'leakage-exponent'])('two pressures: %s', (id) => {
  const normal = normals(11)
  const read = () => {
    const q1 = 1000 * (1 + 0.025 * normal())
    const q2 = 406 * (1 + 0.025 * normal())
    const p1 = 50 * (1 + 0.005 * normal())
    const p2 = 12.5 + 0.125 * normal()
    return { n: Math.log(q1 / q2) / Math.log(p1 / p2), q1, p1 }
  }
  const pressure = Number(/\d+$/.exec(id)?.[0])
  const simulated = halfOf(() => {
    const { n, q1, p1 } = read()
    return id === 'leakage-exponent' ? n : q1 * (pressure / p1) ** n
  })
  const points = [
    { pressure: -50, flow: 1000 },
    { pressure: -12.5, flow: 406 },
  ]
  const found = figure(sheet({ procedure: 'two-point', points }), id)
  expect(ratio(found, simulated)).toBeGreaterThan(least)
  expect(ratio(found, simulated)).toBeLessThan(most)
})

test.each([0, 0.05])('before and after, %f of either shared', (shared) => {
  const normal = normals(13)
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
