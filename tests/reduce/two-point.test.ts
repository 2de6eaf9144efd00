/**
 * Two pressures by ASTM E1827 (from memory): n = ln(Q1/Q2)/ln(P1/P2), C = Q1/P1^n, worked by hand; averages of repeated
 * readings by JCGM 100:2008, 4.2 and G.4.
 */
import { describe, expect, test } from 'vitest'
import { SheetError } from '../../lib/reduce/errors.ts'
import { points } from '../../lib/reduce/points.ts'
import { reduce, workingOf } from '../../lib/reduce/reduce.ts'
import { fakeSheet } from './sheets.ts'

const at = (pressure: number, flow: number) => ({ pressure: -pressure, flow })
const two = (readings: [number, number][], more: Parameters<typeof fakeSheet>[0] = {}) =>
  fakeSheet({ procedure: 'two-point', points: readings.map(([pressure, flow]) => at(pressure, flow)), ...more })

const onePoint = (...readings: [number, number][]) => fakeSheet({ points: readings.map(([p, q]) => at(p, q)) })

const logHalf = ({ low, high }: { low?: number | undefined; high?: number | undefined }) => Math.log(high! / low!) / 2

/**
 * Standard uncertainty of one reading by itself, with an exponent of 0.65: 0.5 % of its flow, 0.2 Pa in calm weather (common
 * practice, no source), known to 1 degree of freedom.
 */
const own = (pressure: number) => Math.hypot(0.005, (0.65 * 0.2) / pressure)

/** 95 % half-width at 50 Pa, the random part's variance beside 5 % of flow and 0.65 times 1 % of pressure; factor 2. */
const halfWith = (v: number) => 2 * Math.sqrt(0.025 ** 2 + 0.00325 ** 2 + v)

describe('two pressures', () => {
  // ln(1000/406.126)/ln(50/12.5) = 0.901092/1.386294 = 0.65; 1000/50^0.65 = 78.6405.
  const sheet = two([
    [50, 1000],
    [12.5, 406.126],
  ])

  test('exponent, coefficient and flow, worked by hand', () => {
    const { figures, fit } = reduce(sheet)
    expect(figures['leakage-exponent']?.value).toBeCloseTo(0.65, 5)
    expect(figures['leakage-coefficient']?.value).toBeCloseTo(78.6405, 2)
    expect(figures['flow-50']?.value).toBeCloseTo(1000, 9)
    expect(figures['flow-4']?.value).toBeCloseTo(1000 * (4 / 50) ** 0.65, 2)
    expect(fit).toBeUndefined()
    expect(figures).not.toHaveProperty('correlation')
    expect(figures['leakage-exponent']?.note).not.toContain('Assumed')
  })

  test('limits: the flow’s error is common to both pressures, the gauge’s has one sign, each reading scatters by itself', () => {
    const { figures } = reduce(sheet)
    expect(logHalf(figures['flow-50']!)).toBeCloseTo(Math.hypot(0.05, 0.65 * 0.01, 2 * own(50)), 7)
    // ln(4 / 12.5) / ln 4 = -0.8219 of the reading at 50 Pa, 1.8219 of that at 12.5 Pa: the flow’s error stays 5 %.
    const w = Math.log(4 / 12.5) / Math.log(4)
    const gauge = (0.65 * (w * 0.01 + (1 - w) * 0.02)) / 2
    const scatter = Math.hypot(w * own(50), (1 - w) * own(12.5))
    // (1.1726e-3 / 4.634e-4)² = 6.4: t of 6 is 2.4469.
    expect(logHalf(figures['flow-4']!)).toBeCloseTo(2.446911851 * Math.hypot(0.025, gauge, scatter), 7)
    // Of n the flow’s error has no part. (9.131e-5 / 8.581e-5)² = 1.1: t of 1 is 12.706.
    const n = figures['leakage-exponent']!
    const tilt = (0.65 * (0.02 - 0.01)) / 2 / Math.log(4)
    const slope = Math.hypot(own(50), own(12.5)) / Math.log(4)
    expect((n.high! - n.low!) / 2).toBeCloseTo(12.70620474 * Math.hypot(tilt, slope), 6)
  })

  test('limits: through two ranges the flow’s errors are independent, and tilt the line', () => {
    // 100 × 50^0.5 = 707.1068 and 28.7173 × 200^0.5 = 406.1239, as above near enough: n = 0.4.
    const ranges = { wide: { coefficient: 100, exponent: 0.5 }, narrow: { coefficient: 28.7173, exponent: 0.5 } }
    const through = [
      { pressure: -50, devicePressure: 50, range: 'wide' },
      { pressure: -12.5, devicePressure: 200, range: 'narrow' },
    ]
    const shown = through.map(({ pressure, devicePressure, range }) =>
      at(-pressure, ranges[range as 'wide'].coefficient * Math.sqrt(devicePressure)),
    )
    const partOf = (from: typeof through | typeof shown, id: string) =>
      reduce(two([], { points: from, device: { ranges } })).figures[id]!.budget!.find(({ part }) => part === 'device')
        ?.u
    const n = Math.log(shown[0]!.flow / shown[1]!.flow) / Math.log(4)
    expect(partOf(through, 'leakage-exponent')).toBeCloseTo((0.025 * Math.SQRT2) / Math.log(4) / n, 9)
    expect(partOf(shown, 'leakage-exponent')).toBeUndefined()
    const w = Math.log(4 / 12.5) / Math.log(4)
    expect(partOf(through, 'flow-4')).toBeCloseTo(0.025 * Math.hypot(w, 1 - w), 9)
    expect(partOf(shown, 'flow-4')).toBeCloseTo(0.025, 9)
  })

  test('the working can be followed to the exponent', () => {
    expect(workingOf(reduce(sheet), 'flow-50').find(({ step }) => step.startsWith('Exponent'))?.values).toBe(
      'Q1 = 1000 cfm, Q2 = 406.126 cfm, P1 = 50 Pa, P2 = 12.5 Pa',
    )
  })

  test('readings near each are averaged, others left out, whatever their order', () => {
    const readings: [number, number][] = [
      [11.5, 390],
      [49, 985],
      [30, 700],
      [51, 1010],
      [12.5, 404],
      [13.5, 424],
    ]
    const many = two(readings)
    expect(points(many).map(({ used }) => used)).toEqual([true, true, false, true, true, true])
    const { figures } = reduce(many)
    const n = Math.log(997.5 / 406) / Math.log(50 / 12.5)
    // Shares by budget.R (tests/published/r): device 96.64 %, scatter 1.74 %, gauge 1.63 %.
    expect(figures['leakage-exponent']?.value).toBeCloseTo(n, 12)
    expect(figures['flow-50']?.note).toMatchInlineSnapshot(
      `"Averages two readings near 50 Pa (point 2, point 4); they spread 0.088 %. Averages three readings near 12.5 Pa (point 1, point 5, point 6); they spread 2 %. Temperatures not given: no air correction. Limits, by share of the variance: the flow device 97 %, wind and the scatter of the readings 2 %, the pressure gauge 2 %; coverage factor 2. Few baseline readings: the weather is taken as calm beside them, 0.2 Pa."`,
    )
    expect(reduce(two(readings.toReversed())).figures['flow-50']?.value).toBeCloseTo(figures['flow-50']!.value, 9)
  })

  test.each([
    [[[50, 1000]], 'too few'],
    [
      [
        [50, 1000],
        [48, 980],
      ],
      'same pressure',
    ],
    [
      [
        [50, 1e-6],
        [46.9, 1e6],
      ],
      'no line',
    ],
  ] as [[number, number][], string][])('%j is refused: %s', (readings, code) => {
    let issues: unknown
    try {
      reduce(two(readings))
    } catch (error) {
      issues = (error as SheetError).issues.map((issue) => issue.code)
    }
    expect(issues).toEqual([code])
  })
})

describe('repeated readings of a one-point test', () => {
  test('within 3 Pa of the nearest to 50 Pa they are averaged, and the note gives their spread', () => {
    const report = reduce(onePoint([50, 1000], [51, 1010], [26, 640], [49, 990]))
    expect(report.figures['flow-50']?.value).toBeCloseTo(1000, 9)
    // Shares by budget.R (tests/published/r): device 97.49 %, gauge 1.65 %, scatter 0.86 %, which is not named.
    expect(report.figures['flow-50']?.note).toMatchInlineSnapshot(
      `"Averages three readings near 50 Pa (point 1, point 2, point 4); they spread 0.6 %. Temperatures not given: no air correction. Limits, by share of the variance: the flow device 97 %, the pressure gauge 2 %; coverage factor 2. Few baseline readings: the weather is taken as calm beside them, 0.2 Pa."`,
    )
  })

  test('further apart the nearest alone counts', () => {
    const report = reduce(onePoint([50.3, 790], [37.7, 658], [25.2, 502]))
    expect(report.figures['flow-50']?.value).toBeCloseTo(790 * (50 / 50.3) ** 0.65, 9)
    expect(report.figures['flow-50']?.note).toContain('Uses point 1, the nearest to 50 Pa.')
  })

  test('of two as near the one at the higher pressure counts, whatever the order', () => {
    for (const pair of [
      [
        [45, 900],
        [55, 1080],
      ],
      [
        [55, 1080],
        [45, 900],
      ],
    ] as [number, number][][]) {
      expect(reduce(onePoint(...pair)).figures['flow-50']?.value).toBeCloseTo(1080 * (50 / 55) ** 0.65, 9)
    }
  })

  test('the scatter adds: Student t of the effective degrees of freedom, worked by hand', () => {
    // Expected of one reading: v = 0.5 %² + (0.65 × 0.2 / 50)² = 3.176e-5, with 1 degree of freedom. 1000, 1030 and 970
    // at 50 Pa: squares about the mean logarithm 1.80122e-3, over v and 2 degrees 28.357. Pooled (1 + 2 × 28.357) / 3 =
    // 19.238; the points alone show more: mean of both 23.797. u² = 23.797 v / 3 = 2.5194e-4 with 3 degrees of freedom.
    // Device and gauge 0.025² + 0.00325² = 6.35563e-4; together 8.8750e-4.
    // ν = 3 × (8.8750 / 2.5194)² = 37.2, t(37) = 2.02619: U = 6.0362 %.
    const { low, high, value } = reduce(onePoint([50, 1000], [50, 1030], [50, 970])).figures['flow-50']!
    expect((100 * (high! - low!)) / (2 * value)).toBeCloseTo(6.0362, 3)
  })

  test('without the instrument: the scatter of the repeats alone, worked by hand', () => {
    // s = 3 %, u = 3/√3 = 1.7321 %, 2 degrees of freedom, t(2) = 4.30265: U = 7.4524 %.
    const repeats = onePoint([50, 1000], [50, 1030], [50, 970])
    const { low, high, value } = reduce(repeats, { instrumentUncertainty: false }).figures['flow-50']!
    expect((100 * (high! - low!)) / (2 * value)).toBeCloseTo(7.4524, 3)
  })

  test('repeats that do not scatter leave the value, and less of the random part of a single reading', () => {
    const [one, three] = [onePoint([50, 1000]), onePoint([50, 1000], [50, 1000], [50, 1000])].map(
      (from) => reduce(from).figures['flow-50']!,
    )
    expect(three?.value).toBe(one?.value)
    // v = 3.176e-5 of one. Of three: a third of it for the mean, and of that a third, as 1 of 3 degrees of freedom shows it.
    expect(one!.high! / one!.value - 1).toBeCloseTo(halfWith(3.176e-5), 9)
    expect(three!.high! / three!.value - 1).toBeCloseTo(halfWith(3.176e-5 / 9), 9)
  })
})

const within = (air: NonNullable<Parameters<typeof fakeSheet>[0]>['air'], corrections?: 'always' | 'threshold') =>
  fakeSheet({ ...(air && { air }), ...(corrections && { corrections }) })
const flow = (from: ReturnType<typeof fakeSheet>) => reduce(from).figures['flow-50']!.value

describe('corrections by threshold, ANSI/RESNET/ICC 380 (from memory)', () => {
  test('within both: as if no air were typed, and the note and the working say why', () => {
    const mild = within({ indoor: 68, outdoor: 38, elevation: 5000 }, 'threshold')
    expect(flow(mild)).toBe(flow(fakeSheet()))
    expect(reduce(mild).figures['flow-50']?.note).toContain('within the thresholds')
    const step = workingOf(reduce(mild), 'flow-50').find(
      ({ step: name }) => name === 'Whether the air is corrected for',
    )
    expect(reduce(mild).checks.find(({ id }) => id === 'air')?.text).toContain('within the thresholds')
    expect(step).toMatchObject({ values: 'elevation = 5000 ft, difference = 30 °F', result: 'none' })
  })

  test('beyond one: either brings both', () => {
    const cold = { indoor: 68, outdoor: 37.9, elevation: 4000 }
    expect(flow(within(cold, 'threshold'))).toBe(flow(within(cold)))
    const high = { indoor: 70, outdoor: 60, elevation: 5001 }
    expect(flow(within(high, 'threshold'))).toBe(flow(within(high)))
    const step = workingOf(reduce(within(high, 'threshold')), 'flow-50').find(
      ({ step: name }) => name === 'Whether the air is corrected for',
    )
    expect(step).toMatchObject({
      values: 'elevation = 5001 ft, difference = 10 °F',
      result: 'altitude and temperature',
    })
  })

  test('beyond both, or when corrections always apply: everything', () => {
    const hard = { indoor: 70, outdoor: 10, elevation: 7000 }
    expect(flow(within(hard, 'threshold'))).toBe(flow(within(hard)))
    expect(flow(within(hard, 'always'))).toBe(flow(within(hard)))
  })

  test('a barometer stands for the elevation', () => {
    expect(flow(within({ indoor: 68, outdoor: 60, barometer: 95_000 }, 'threshold'))).toBe(flow(fakeSheet()))
    const high = { indoor: 68, outdoor: 60, barometer: 80_000 }
    expect(flow(within(high, 'threshold'))).toBe(flow(within(high)))
  })
})

describe('an assumed exponent and the air correction', () => {
  test('the interval holds what the exponent does through the air factor, the flow as read does not', () => {
    const sheet = fakeSheet({ air: { indoor: 68, outdoor: -22 } })
    const { figures } = reduce(sheet, { instrumentUncertainty: false })
    const half = ({ low, high, value }: (typeof figures)[string]) => (high! - low!) / 2 / value
    expect(half(figures['flow-50-as-read']!)).toBeCloseTo(0, 12)
    // Numerically: the same sheet with exponents on either side.
    const other = (exponent: number) => reduce({ ...sheet, exponent }).figures['flow-50']!.value
    const slope = (other(0.65 + 1e-5) - other(0.65 - 1e-5)) / 2e-5 / other(0.65)
    expect(half(figures['flow-50']!)).toBeCloseTo(Math.abs(slope) * 0.1, 6)
    expect(half(figures['flow-50']!)).toBeGreaterThan(0.04)
  })
})

const means = Array.from({ length: 101 }, (_, index) => (index - 50) / 100)

/** What must be typed for a corrected pressure. */
const typed = (pressure: number, mean: number) => Number((pressure - mean).toFixed(2))

function noteOf(first: number, second: number, mean: number): string {
  const sheet = onePoint([first, 1000], [second, 1000])
  return reduce({ ...sheet, baseline: { before: [mean], after: [] } }).figures['flow-50']!.note!
}

describe('decimals as typed, whatever baseline both readings are corrected for', () => {
  test('readings 3.0 Pa apart are repeats, those 3.1 Pa apart are not', () => {
    const averaged = (second: number) => means.filter((mean) => noteOf(33.6, second, mean).startsWith('Averages two'))
    expect(averaged(30.6)).toEqual(means)
    expect(averaged(30.5)).toEqual([])
  })

  test('of two readings 2.1 Pa off 50 Pa the one at the higher pressure is taken', () => {
    const notes = means.map((mean) => noteOf(typed(47.9, mean), typed(52.1, mean), mean))
    expect(notes.filter((note) => !note.startsWith('Uses point 2'))).toEqual([])
  })
})
