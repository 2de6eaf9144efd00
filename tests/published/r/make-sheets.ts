/**
 * Writes sheets.json: invented tests of invented houses and ducts, with the scatter that wind and instruments give.
 * Seeded, so that it writes the same file every time:
 *
 *     npx node tests/published/r/make-sheets.ts && Rscript tests/published/r/oracle.R
 */
import { writeFileSync } from 'node:fs'

type Units = { flow: 'cfm' | 'm3/h' | 'L/s'; temperature: 'degF' | 'degC'; length: 'ft' | 'm' }
type Reading = { pressure: number; flow: number } | { pressure: number; devicePressure: number; range: string }

/** Mulberry32, a public-domain generator of 32-bit state. */
const generator = (seed: number) => () => {
  seed = (seed + 0x6d2b79f5) | 0
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296
}
const random = generator(20261125)
const between = (low: number, high: number) => low + (high - low) * random()
const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
const round = (value: number, decimals: number) => Number(value.toFixed(decimals))
const pick = <T>(list: readonly T[], index: number): T => list[index % list.length] as T

const IP: Units = { flow: 'cfm', temperature: 'degF', length: 'ft' }
const SI: Units = { flow: 'm3/h', temperature: 'degC', length: 'm' }
const LITRES: Units = { flow: 'L/s', temperature: 'degC', length: 'm' }

/** One unit of flow in m3/h, as near as inventing readings needs. */
const flowSize = { cfm: 1.699, 'm3/h': 1, 'L/s': 3.6 }

const flowText = (flow: number) => round(flow, flow < 100 ? 1 : 0)

function air(kind: number, units: Units) {
  if (kind === 0) return {}
  const degrees = (celsius: number) => round(units.temperature === 'degF' ? celsius * 1.8 + 32 : celsius, 1)
  const metres = between(150, 2300)
  return {
    air: {
      indoor: degrees(between(16, 27)),
      outdoor: degrees(between(-22, 38)),
      ...((kind === 2 || kind === 4) && { elevation: Math.round(units.length === 'ft' ? metres / 0.3048 : metres) }),
      ...(kind >= 3 && { barometer: Math.round(101325 * Math.exp(-metres / 8400) + 300 * normal()) }),
    },
  }
}

function building(units: Units, index: number) {
  const area = between(80, 320)
  const length = (metres: number) => (units.length === 'ft' ? metres / 0.3048 : metres)
  return {
    volume: Math.round(length(length(length(area * between(2.4, 2.9))))),
    floorArea: Math.round(length(length(area))),
    enclosureArea: Math.round(length(length(area * between(2.3, 3.1)))),
    height: round(length(between(2.5, 8)), 1),
    bedrooms: 1 + (index % 5),
  }
}

const zeroReadings = (count: number) => Array.from({ length: count }, () => round(-0.8 + 0.9 * normal(), 1))

const baseline = (kind: number) => ({
  before: kind === 0 ? [] : zeroReadings(kind === 1 ? 1 : 5),
  after: kind === 2 ? zeroReadings(4) : [],
})

/** Readings of a leak C dP^n (C in m3/h) at the targets, each scattered by about 1.5 percent. */
function readings(options: {
  sign: number
  targets: number[]
  coefficient: number
  exponent: number
  units: Units
  device: boolean
}): { points: Reading[]; device?: object } {
  const { sign, targets, coefficient, exponent, units, device } = options
  const size = flowSize[units.flow]
  const flows = targets.map((target) => ({
    pressure: round(sign * (target + 0.6 * normal()), 1),
    flow: (coefficient / size) * target ** exponent * Math.exp(0.015 * normal()),
  }))
  if (!device) return { points: flows.map(({ pressure, flow }) => ({ pressure, flow: flowText(flow) })) }
  const largest = Math.max(...flows.map(({ flow }) => flow))
  const ranges = {
    wide: { coefficient: round(largest / 11, 3), exponent: 0.5, minPressure: 10 },
    narrow: { coefficient: round(largest / 31, 3), exponent: 0.512, minPressure: 10 },
  }
  const points = flows.map(({ pressure, flow }) => {
    const range = flow > largest / 2 ? ('wide' as const) : ('narrow' as const)
    const devicePressure = round((flow / ranges[range].coefficient) ** (1 / ranges[range].exponent), 1)
    return { pressure, devicePressure, range }
  })
  return { points, device: { ranges } }
}

const sheets: { name: string; sheet: object }[] = []
const descending = [60, 54, 48, 41, 35, 28, 22, 15]

let index = 0
for (const turn of [0, 1]) {
  for (const procedure of ['astm-e779', 'iso-9972'] as const) {
    for (const direction of ['depressurize', 'pressurize'] as const) {
      for (const units of [IP, SI, LITRES]) {
        const read = readings({
          sign: index % 3 === 0 ? 1 : direction === 'pressurize' ? 1 : -1,
          targets: descending.slice(0, 5 + (index % 4)).map((target, place) => target + place * (index % 2)),
          coefficient: between(25, 160),
          exponent: between(0.55, 0.74),
          units,
          device: index % 3 === 2 || (index % 7 === 3 && turn === 1),
        })
        sheets.push({
          name: `enclosure ${index + 1}`,
          sheet: {
            subject: 'enclosure',
            procedure,
            direction,
            units,
            baseline: baseline(pick([2, 1, 2, 0, 2], index)),
            flowBasis: pick(['indicated', 'indicated', 'indicated', 'actual'], index + turn),
            ...read,
            ...('device' in read && index % 2 === 0 && { device: { ...read.device, calibrationDensity: 1.19 } }),
            ...air(pick([1, 2, 0, 3, 4], index), units),
            building: building(units, index),
            weatherShieldingFactor: 0.59,
          },
        })
        index += 1
      }
    }
  }
}

for (const [place, units] of [IP, SI, LITRES].entries()) {
  sheets.push({
    name: `ducts ${place + 1}`,
    sheet: {
      subject: 'ducts',
      procedure: place === 1 ? 'iso-9972' : 'astm-e779',
      direction: 'pressurize',
      units,
      baseline: { before: [], after: [] },
      flowBasis: 'indicated',
      ...readings({
        sign: 1,
        targets: [50, 40, 30, 25, 20, 15].slice(0, 6 - (place % 2)),
        coefficient: between(8, 30),
        exponent: between(0.55, 0.65),
        units,
        device: place === 2,
      }),
      building: { floorArea: building(units, place).floorArea },
      duct: { leakage: place === 0 ? 'total' : 'outside', airHandlerFlow: Math.round(1900 / flowSize[units.flow]) },
    },
  })
}

for (const [place, units] of [IP, SI, LITRES, IP, SI, IP].entries()) {
  const direction = place % 2 ? 'pressurize' : 'depressurize'
  sheets.push({
    name: `one point ${place + 1}`,
    sheet: {
      subject: 'enclosure',
      procedure: 'one-point',
      direction,
      units,
      baseline: baseline(place % 3),
      flowBasis: place === 3 ? 'actual' : 'indicated',
      ...readings({
        sign: direction === 'pressurize' ? 1 : -1,
        targets: [pick([50, 49, 32, 51, 50, 20], place)],
        coefficient: between(30, 140),
        exponent: 0.65,
        units,
        device: place === 4,
      }),
      ...(place === 2 && { exponent: 0.6, exponentUncertainty: 0.08 }),
      ...air(pick([1, 2, 0, 3, 4, 2], place), units),
      building: building(units, place),
      weatherShieldingFactor: 0.66,
    },
  })
}

for (const [place, units] of [IP, SI].entries()) {
  sheets.push({
    name: `ducts at one point ${place + 1}`,
    sheet: {
      subject: 'ducts',
      procedure: 'one-point',
      direction: 'pressurize',
      units,
      baseline: { before: [], after: [] },
      flowBasis: 'indicated',
      ...readings({ sign: 1, targets: [25 - 4 * place], coefficient: 11, exponent: 0.6, units, device: false }),
      building: { floorArea: building(units, place).floorArea },
      duct: { leakage: 'total', airHandlerFlow: Math.round(1800 / flowSize[units.flow]) },
    },
  })
}

writeFileSync(new URL('sheets.json', import.meta.url), `${JSON.stringify(sheets, null, 1)}\n`)
