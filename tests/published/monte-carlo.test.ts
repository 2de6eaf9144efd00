/**
 * The uncertainty of a one-point test against a Monte Carlo simulation, the method of JCGM 101:2008 (propagation of
 * distributions): 20,000 draws of flow, pressure, exponent and volume through `Q50 = Q (50/dP)^n`, `ACH50 = 60 Q50 / V`.
 * What a certificate gives as plus or minus stands for two standard uncertainties, as JCGM 100 has it at 95 %. A single
 * reading scatters too: its pressure as the readings of the baseline do, or by 0.2 Pa in calm weather where there are none,
 * its flow by as large a share as that makes at 50 Pa, at least 0.5 % (common practice, no source).
 */
import { expect, test } from 'vitest'
import { draws, zeroReadings } from './draws.ts'
import { figure, sheet } from './support.ts'

const DRAWS = 20_000

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
    // Worked by hand: the scatter, taken with 1 degree of freedom, has 3.204e-5 of 1.357e-4: floor(17.94) degrees of
    // freedom, whose Student's t is 2.1098. The draws take 0.2 Pa as known.
    factor: 2.1098,
  },
]

/** Half of the interval that holds 95 % of the draws, and their median. */
function interval(draw: () => number): { half: number; median: number } {
  const drawn = Array.from({ length: DRAWS }, draw).toSorted((a, b) => a - b)
  const quantile = (share: number) => drawn[Math.round(share * (DRAWS - 1))] ?? Number.NaN
  return { half: (quantile(0.975) - quantile(0.025)) / 2, median: quantile(0.5) }
}

test.each(cases)('$name: 95 %% half-width of ACH50', ({ pressure, instrument, volumePercent, factor = 2 }) => {
  const used = instrument ?? { pressurePercent: 1, pressureFloor: 0.25, flowPercent: 5 }
  const flow = 1200
  const volume = 18_000
  const { normal } = draws(101)

  const pressureHalf = Math.max((pressure * used.pressurePercent) / 100, used.pressureFloor)
  const simulated = interval(() => {
    const q = flow * (1 + (used.flowPercent / 200) * normal()) * (1 + 0.005 * normal())
    const dp = pressure + (pressureHalf / 2) * normal() + 0.2 * normal()
    const n = 0.65 + 0.05 * normal()
    const v = volume * (1 + ((volumePercent ?? 0) / 200) * normal())
    return (60 * q * (50 / dp) ** n) / v
  })

  const house = sheet({
    points: [{ pressure, flow }],
    ...(instrument && { instrument }),
    building: { volume, ...(volumePercent !== undefined && { volumePercent }) },
  })
  const found = figure(house, 'air-changes-50')
  const half = ((found.high ?? Number.NaN) - (found.low ?? Number.NaN)) / 2
  // A coverage factor of 2 for 1.96 gives 2 %, the draws themselves about 1 %.
  expect(half / simulated.half).toBeGreaterThan((0.96 * factor) / 2)
  expect(half / simulated.half).toBeLessThan((1.05 * factor) / 2)
  expect(found.value / simulated.median).toBeCloseTo(1, 2)
})

const offsets = [0.9, -1.2, 0.4, -0.7, 0.6]
const fine = { pressurePercent: 0.5, pressureFloor: 0.1, flowPercent: 2 }

test.each([
  { name: 'a little wind', wind: 0.6, drift: 0.5 },
  { name: 'strong wind', wind: 2.2, drift: 1 },
  { name: 'a zero that drifts', wind: 0.4, drift: 4 },
  { name: 'strong wind, averaged six times as long', wind: 2.2, drift: 0.5, averaging: { baseline: 10, reading: 60 } },
])('one reading, baselines with $name: 95 %% half-width of the flow', ({ wind, drift, averaging }) => {
  const zero = zeroReadings(
    [-1, -1 + drift],
    offsets.map((offset) => wind * offset),
  )
  const pressure = 46
  const flow = 1200
  const { uniform, normal, scatter } = draws(37)
  const simulated = interval(() => {
    const s0 = scatter(zero.scatter, zero.freedom)
    const s = s0 * Math.sqrt((averaging?.baseline ?? 1) / (averaging?.reading ?? 1))
    const n = 0.65 + 0.05 * normal()
    const q = flow * (1 + (fine.flowPercent / 200) * normal()) * (1 + Math.max(0.005, (0.65 * s) / 50) * normal())
    const baseline = s0 * zero.meanShare * normal() + zero.apart * (uniform() - 0.5)
    const dp = pressure * (1 + (fine.pressurePercent / 200) * normal()) + s * normal() + baseline
    return q * (50 / dp) ** n
  })
  const { baseline, mean } = zero
  const house = sheet({
    direction: 'pressurize',
    points: [{ pressure: pressure + mean, flow }],
    baseline,
    instrument: fine,
    ...(averaging && { averaging }),
  })
  const { value, low = NaN, high = NaN } = figure(house, 'flow-50')
  // A uniform part has 1.65 for 2: JCGM 100 is wide where it rules. Welch and Satterthwaite's whole degrees of freedom, never below a factor of 2, for Student's t in part.
  expect((high - low) / 2 / simulated.half).toBeGreaterThan(0.96)
  expect((high - low) / 2 / simulated.half).toBeLessThan(1.06)
  expect(value / simulated.median).toBeCloseTo(1, 2)
})
