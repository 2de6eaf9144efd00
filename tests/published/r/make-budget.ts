/**
 * Writes budget.json: invented tests in which the parts of an uncertainty weigh differently: several baseline readings or
 * one, drift, averaging times, a scatter that is given, several ranges, repeats, stations, fine and poor instruments, a
 * doubtful size. Seeded, so that it writes the same file every time:
 *
 *     npx node tests/published/r/make-budget.ts && Rscript tests/published/r/oracle.R budget
 */
import { writeFileSync } from 'node:fs'
import { generator } from '../../random.ts'

const random = generator(1040)
const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
const between = (low: number, high: number) => low + (high - low) * random()
const round = (value: number, decimals: number) => Number(value.toFixed(decimals))
const pick = <T>(list: readonly T[], index: number): T => list[index % list.length] as T
const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / Math.max(1, list.length)

const unitSets = [
  { flow: 'cfm', temperature: 'degF', length: 'ft' },
  { flow: 'm3/h', temperature: 'degC', length: 'm' },
  { flow: 'L/s', temperature: 'degC', length: 'm' },
] as const

const procedures = {
  'one point': { procedure: 'one-point', targets: [50] },
  'one point, five repeats': { procedure: 'one-point', targets: [50, 50.8, 49.1, 50.3, 49.6] },
  'one point far below': { procedure: 'one-point', targets: [23, 24, 41] },
  'two points': { procedure: 'two-point', targets: [50, 12.5] },
  'two points, three and two repeats, one between': {
    procedure: 'two-point',
    targets: [13, 50.6, 49.7, 12.2, 30, 51.2],
  },
  'two points, five repeats each': {
    procedure: 'two-point',
    targets: [50, 50.5, 49.2, 50.9, 49.8, 12.5, 12.1, 13.2, 12.8, 12.4],
  },
  'three points': { procedure: 'astm-e779', targets: [55, 34, 15] },
  'seven points': { procedure: 'astm-e779', targets: [60, 52, 44, 36, 28, 20, 12] },
  'ten points': { procedure: 'iso-9972', targets: [64, 58, 52, 46, 40, 34, 28, 22, 16, 10] },
  'eight points, each pressure twice': { procedure: 'iso-9972', targets: [60, 60, 45, 45, 30, 30, 15, 15] },
} as const

interface Weather {
  /** Standard deviation of a pressure reading, Pa, and of a flow, as a share. */
  noise: [pressure: number, flow: number]
  /** How many readings before and after, and how far the zero drifts between, Pa. */
  counts: [before: number, after: number]
  drift?: number
  more?: object
}

const weathers: Record<string, Weather> = {
  'no baseline': { noise: [0.2, 0.005], counts: [0, 0] },
  'one reading before': { noise: [0.3, 0.008], counts: [1, 0] },
  'one before, one after': { noise: [0.7, 0.01], counts: [1, 1], drift: 1.4 },
  'two before, one after': { noise: [0.7, 0.01], counts: [2, 1], drift: -0.6 },
  'five after alone': { noise: [1, 0.015], counts: [0, 5] },
  'windy, five and five': { noise: [2, 0.02], counts: [5, 5], drift: 2 },
  'calm, twelve and ten': { noise: [0.15, 0.004], counts: [12, 10], drift: 0.1 },
  'a gauge that shows no scatter': { noise: [0, 0.003], counts: [4, 3] },
  'long readings of the baseline, short ones of the points': {
    noise: [0.8, 0.012],
    counts: [3, 3],
    drift: 0.5,
    more: { averaging: { baseline: 60, reading: 10 } },
  },
  'short readings of the baseline, long ones of the points': {
    noise: [1.2, 0.006],
    counts: [6, 4],
    more: { averaging: { baseline: 5, reading: 30 } },
  },
  'a scatter given, one and one': {
    noise: [0.9, 0.01],
    counts: [1, 1],
    drift: 0.8,
    more: { pressureScatter: 0.9, averaging: { baseline: 10, reading: 20 } },
  },
  'a scatter given, no baseline': { noise: [0.5, 0.01], counts: [0, 0], more: { pressureScatter: 0.6 } },
  'a scatter given that the readings stand before': {
    noise: [0.4, 0.01],
    counts: [4, 4],
    more: { pressureScatter: 3 },
  },
  'only the averaging time of the points known': {
    noise: [0.6, 0.01],
    counts: [3, 3],
    more: { averaging: { reading: 30 } },
  },
  'only the averaging time of the baseline known': {
    noise: [0.6, 0.01],
    counts: [3, 3],
    more: { averaging: { baseline: 60 } },
  },
}

const instruments = [
  undefined,
  { pressurePercent: 0.5, pressureFloor: 0.1, flowPercent: 2 },
  { pressurePercent: 2, pressureFloor: 1, flowPercent: 3 },
  { pressurePercent: 0, pressureFloor: 0, flowPercent: 0 },
  { pressurePercent: 1, pressureFloor: 0.15, flowPercent: 10 },
]

const ranges = {
  wide: { coefficient: 95.2, exponent: 0.5 },
  middle: { coefficient: 31.7, exponent: 0.508 },
  narrow: { coefficient: 11.4, exponent: 0.514 },
}

/** One sheet; `turn` decides what the kind and the weather leave open. */
function sheetOf(kind: keyof typeof procedures, weather: Weather, turn: number, ducts = false): object {
  const { procedure, targets } = procedures[kind]
  const units = pick(unitSets, turn)
  const direction = turn % 2 ? 'pressurize' : 'depressurize'
  const sign = direction === 'pressurize' ? 1 : -1
  const zero = round(between(-1.5, 0.6), 1)
  const [before, after] = weather.counts.map((count, side) =>
    Array.from({ length: count }, () => round(zero + side * (weather.drift ?? 0) + weather.noise[0] * normal(), 1)),
  ) as [number[], number[]]
  const sides = [before, after].filter((side) => side.length > 0)
  const baseline = mean(sides.map(mean))
  const [coefficient, exponent] = [between(40, 140), between(0.56, 0.72)]
  const scale = ducts ? 0.5 : 1
  const through = turn % 3 === 2
  const points = targets.map((target, place) => {
    const pressure = round(sign * scale * target + baseline + weather.noise[0] * normal(), 1)
    const flow = coefficient * (scale * target) ** exponent * Math.exp(weather.noise[1] * normal())
    const range = flow > 600 ? 'wide' : flow > 300 ? 'middle' : 'narrow'
    // Where a device has ranges, now and then a flow that the instrument shows itself.
    if (!through || place % 4 === 3) return { pressure, flow: round(flow, 1) }
    const { coefficient: k, exponent: m } = ranges[range]
    return { pressure, devicePressure: round((flow / k) ** (1 / m), 1), range }
  })
  const length = (metres: number) => (units.length === 'ft' ? metres / 0.3048 : metres)
  const degrees = (celsius: number) => round(units.temperature === 'degF' ? celsius * 1.8 + 32 : celsius, 1)
  const instrument = pick(instruments, turn)
  return {
    subject: ducts ? 'ducts' : 'enclosure',
    procedure,
    direction,
    units,
    baseline: { before, after },
    flowBasis: turn % 4 === 3 ? 'actual' : 'indicated',
    points,
    ...(through && { device: { ranges } }),
    ...(turn % 5 < 3 && {
      air: { indoor: degrees(between(17, 25)), outdoor: degrees(between(-25, 34)), elevation: round(length(900), 0) },
    }),
    ...(procedure === 'one-point' && turn % 4 === 1 && { exponent: 0.62, exponentUncertainty: 0.03 }),
    ...(instrument && { instrument }),
    building: {
      volume: round(length(length(length(410))), 0),
      floorArea: round(length(length(165)), 0),
      enclosureArea: round(length(length(440)), 0),
      height: round(length(5.1), 1),
      ...(turn % 2 === 0 && { volumePercent: pick([3, 8, 12], turn / 2) }),
    },
    ...(ducts && { duct: { leakage: 'total', airHandlerFlow: 900 } }),
    ...weather.more,
  }
}

const sheets: { name: string; sheet: object }[] = []
const kinds = Object.keys(procedures) as (keyof typeof procedures)[]
let turn = 0
for (const [name, weather] of Object.entries(weathers)) {
  // Each weather meets three kinds, so that each kind meets several.
  for (const step of [0, 3, 7]) {
    const kind = pick(kinds, turn + step)
    const ducts = turn % 7 === 5
    sheets.push({ name: `${kind}${ducts ? ' of ducts' : ''}, ${name}`, sheet: sheetOf(kind, weather, turn, ducts) })
    turn += 1
  }
}
// What is rare above: every kind in wind with five readings each side, through the ranges of a device.
for (const [place, kind] of kinds.entries()) {
  const windy = weathers['windy, five and five']!
  sheets.push({ name: `${kind}, in wind, through ranges`, sheet: sheetOf(kind, windy, 2 + 3 * place) })
}

writeFileSync(new URL('budget.json', import.meta.url), `${JSON.stringify(sheets, null, 1)}\n`)
