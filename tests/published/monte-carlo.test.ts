/**
 * The uncertainty of a one-point test against a Monte Carlo simulation, the method of JCGM 101:2008 (propagation of
 * distributions): 20,000 draws of flow, pressure, exponent and volume through `Q50 = Q (50/dP)^n`, `ACH50 = 60 Q50 / V`.
 * What a certificate gives as plus or minus stands for two standard uncertainties, as JCGM 100 has it at 95 %.
 */
import { expect, test } from 'vitest'
import { figure, sheet } from './support.ts'

const DRAWS = 20_000

/** Mulberry32, a public-domain generator of 32-bit state. */
const generator = (seed: number) => () => {
  seed = (seed + 0x6d2b79f5) | 0
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296
}

const cases = [
  { name: 'at 50 Pa, usual instrument', pressure: 50 },
  { name: 'at 30 Pa, usual instrument', pressure: 30 },
  { name: 'at 20 Pa, where the assumed exponent rules', pressure: 20 },
  {
    name: 'at 12 Pa, a poor gauge',
    pressure: 12,
    instrument: { pressurePercent: 2, pressureFloor: 1, flowPercent: 3 },
  },
  { name: 'at 45 Pa, a doubtful volume', pressure: 45, volumePercent: 8 },
  {
    name: 'at 49 Pa, a fine instrument',
    pressure: 49,
    instrument: { pressurePercent: 0.5, pressureFloor: 0.1, flowPercent: 2 },
  },
]

test.each(cases)('$name: 95 %% half-width of ACH50', ({ pressure, instrument, volumePercent }) => {
  const used = instrument ?? { pressurePercent: 1, pressureFloor: 0.25, flowPercent: 5 }
  const flow = 1200
  const volume = 18_000
  const random = generator(101)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

  const pressureHalf = Math.max((pressure * used.pressurePercent) / 100, used.pressureFloor)
  const drawn = Array.from({ length: DRAWS }, () => {
    const q = flow * (1 + (used.flowPercent / 200) * normal())
    const dp = pressure + (pressureHalf / 2) * normal()
    const n = 0.65 + 0.05 * normal()
    const v = volume * (1 + ((volumePercent ?? 0) / 200) * normal())
    return (60 * q * (50 / dp) ** n) / v
  }).toSorted((a, b) => a - b)
  const quantile = (share: number) => drawn[Math.round(share * (DRAWS - 1))] ?? Number.NaN
  const simulated = (quantile(0.975) - quantile(0.025)) / 2

  const house = sheet({
    points: [{ pressure, flow }],
    ...(instrument && { instrument }),
    building: { volume, ...(volumePercent !== undefined && { volumePercent }) },
  })
  const found = figure(house, 'air-changes-50')
  const half = ((found.high ?? Number.NaN) - (found.low ?? Number.NaN)) / 2
  // A coverage factor of 2 for 1.96 gives 2 %, the draws themselves about 1 %.
  expect(half / simulated).toBeGreaterThan(0.96)
  expect(half / simulated).toBeLessThan(1.05)
  expect(found.value / quantile(0.5)).toBeCloseTo(1, 2)
})
