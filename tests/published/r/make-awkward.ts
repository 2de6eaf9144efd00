/**
 * Writes awkward.json: invented regressions at the edges of what is met, where a fit loses digits or a correction weighs
 * most. Seeded, so that it writes the same file every time:
 *
 *     npx node tests/published/r/make-awkward.ts && Rscript tests/published/r/oracle.R awkward
 */
import { writeFileSync } from 'node:fs'
import { generator } from '../../random.ts'

const random = generator(8000)
const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
const between = (low: number, high: number) => low + (high - low) * random()
const round = (value: number, decimals: number) => Number(value.toFixed(decimals))

const mean = (list: number[]) => list.reduce((sum, value) => sum + value, 0) / list.length

const unitSets = [
  { flow: 'cfm', temperature: 'degF', length: 'ft' },
  { flow: 'm3/h', temperature: 'degC', length: 'm' },
  { flow: 'L/s', temperature: 'degC', length: 'm' },
] as const

interface Kind {
  /** Pressures across the leaks, Pa. */
  targets: number[]
  /** Standard deviation of a flow, as a share. */
  noise: number
  baseline?: [before: number[], after: number[]]
  /** degC indoors and outdoors, metres; Pa for a barometer. */
  air?: { indoor: number; outdoor: number; elevation?: number; barometer?: number }
  exponent?: number
}

const usual = [60, 52, 44, 36, 28, 20, 12]
const kinds: Record<string, Kind> = {
  'three points': { targets: [55, 30, 15], noise: 0.01 },
  'three points close together': { targets: [52, 50, 48], noise: 0.0005 },
  'on a line': { targets: usual, noise: 0 },
  'nearly on a line': { targets: usual, noise: 1e-6 },
  'wide noise': { targets: usual, noise: 0.2 },
  'five points, wide noise': { targets: [60, 45, 33, 22, 14], noise: 0.12 },
  'large negative baseline': { targets: usual, noise: 0.015, baseline: [[-9.2, -8.7], [-10.4]] },
  'baseline that turns its sign': { targets: usual, noise: 0.015, baseline: [[-3.1, -2.2, -4], [2.5]] },
  '8,000 ft': { targets: usual, noise: 0.01, air: { indoor: 20, outdoor: 8, elevation: 2438.4 } },
  '8,000 ft by barometer': { targets: usual, noise: 0.01, air: { indoor: 22, outdoor: -4, barometer: 75_260 } },
  'minus 30 degC': { targets: usual, noise: 0.01, air: { indoor: 21, outdoor: -30, elevation: 210 } },
  'minus 30 degC at 8,000 ft': { targets: usual, noise: 0.02, air: { indoor: 19, outdoor: -30, elevation: 2438.4 } },
  'clustered pressures': { targets: [50.4, 50.2, 50, 49.9, 49.6, 49.5], noise: 0.0005 },
  'one point away from a cluster': { targets: [60, 12.2, 12.1, 12, 11.9, 11.8], noise: 0.01 },
  'many points': { targets: Array.from({ length: 240 }, (_, at) => 10 + at / 4.8), noise: 0.03 },
  'exponent near a half': { targets: usual, noise: 0.005, exponent: 0.505 },
  'exponent near one': { targets: usual, noise: 0.005, exponent: 0.99 },
  'tiny pressures and flows': { targets: [1.2, 0.9, 0.6, 0.4, 0.2], noise: 0.01 },
}

const sheets: { name: string; sheet: object }[] = []
for (const [place, [name, kind]] of Object.entries(kinds).entries()) {
  for (const procedure of ['astm-e779', 'iso-9972'] as const) {
    const turn = place + (procedure === 'iso-9972' ? 1 : 0)
    const units = unitSets[turn % 3]!
    const direction = turn % 2 ? 'pressurize' : 'depressurize'
    const sign = direction === 'pressurize' ? 1 : -1
    const coefficient = between(20, 150)
    const exponent = kind.exponent ?? between(0.55, 0.75)
    const [before, after] = kind.baseline ?? [[], []]
    const zero = kind.baseline ? (mean(before) + mean(after)) / 2 : 0
    // Flows on a line keep every digit: it is the pressures that are typed with few.
    const exact = kind.noise < 1e-3
    const points = kind.targets.map((target) => {
      const pressure = exact ? sign * target + zero : round(sign * target + zero, 1)
      const across = Math.abs(pressure - zero)
      const flow = coefficient * across ** exponent * Math.exp(kind.noise * normal())
      return { pressure, flow: exact ? flow : round(flow, 1) }
    })
    const length = (metres: number) => (units.length === 'ft' ? metres / 0.3048 : metres)
    const degrees = (celsius: number) => (units.temperature === 'degF' ? celsius * 1.8 + 32 : celsius)
    sheets.push({
      name: `${name}, ${procedure}`,
      sheet: {
        subject: 'enclosure',
        procedure,
        direction,
        units,
        baseline: { before, after },
        flowBasis: turn % 4 === 3 ? 'actual' : 'indicated',
        points,
        ...(kind.air && {
          air: {
            indoor: round(degrees(kind.air.indoor), 1),
            outdoor: round(degrees(kind.air.outdoor), 1),
            ...(kind.air.elevation !== undefined && { elevation: round(length(kind.air.elevation), 1) }),
            ...(kind.air.barometer !== undefined && { barometer: kind.air.barometer }),
          },
        }),
        building: {
          volume: round(length(length(length(430))), 0),
          floorArea: round(length(length(172)), 0),
          enclosureArea: round(length(length(455)), 0),
          height: round(length(5.2), 1),
          bedrooms: 3,
        },
        weatherShieldingFactor: 0.59,
      },
    })
  }
}

writeFileSync(new URL('awkward.json', import.meta.url), `${JSON.stringify(sheets, null, 1)}\n`)
