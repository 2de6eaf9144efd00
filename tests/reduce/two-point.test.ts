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

  test('limits: at a station its own part, between and beyond both, as independent', () => {
    const { figures } = reduce(sheet)
    const p1 = Math.hypot(0.05, 0.65 * 0.01)
    const p2 = Math.hypot(0.05, 0.65 * 0.02)
    expect(logHalf(figures['flow-50']!)).toBeCloseTo(p1, 7)
    const w = Math.log(4 / 12.5) / Math.log(4)
    expect(logHalf(figures['flow-4']!)).toBeCloseTo(Math.hypot(w * p1, (1 - w) * p2), 7)
    const n = figures['leakage-exponent']!
    expect((n.high! - n.low!) / 2).toBeCloseTo(Math.hypot(p1, p2) / Math.log(4), 7)
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
    expect(figures['leakage-exponent']?.value).toBeCloseTo(n, 12)
    expect(figures['flow-50']?.note).toMatchInlineSnapshot(
      `"Averages two readings near 50 Pa (point 2, point 4); they spread 0.088 %. Averages three readings near 12.5 Pa (point 1, point 5, point 6); they spread 2 %. Temperatures not given: no air correction. Limits: the scatter of the repeats and the instrument (± 5 % flow, ± 1 % or 0.25 Pa), in quadrature."`,
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
    expect(report.figures['flow-50']?.note).toMatchInlineSnapshot(
      `"Averages three readings near 50 Pa (point 1, point 2, point 4); they spread 0.6 %. Temperatures not given: no air correction. Limits: the assumed exponent and the scatter of the repeats and the instrument (± 5 % flow, ± 1 % or 0.25 Pa), in quadrature."`,
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
    // 1000, 1030 and 970 at 50 Pa: s = 3 %, u = 3/√3 = 1.7321 %. Type B: √(5² + 0.65²)/2 = 2.5210 %; u_c = 3.0587 %.
    // ν = u_c⁴/(u⁴/2) = 19.45, t(19) = 2.09302: U = 6.4018 %.
    const { low, high, value } = reduce(onePoint([50, 1000], [50, 1030], [50, 970])).figures['flow-50']!
    expect((100 * (high! - low!)) / (2 * value)).toBeCloseTo(6.4018, 2)
  })

  test('without the scatter nothing changes', () => {
    const [one, three] = [onePoint([50, 1000]), onePoint([50, 1000], [50, 1000], [50, 1000])].map(
      (from) => reduce(from).figures['flow-50']!,
    )
    expect([three?.value, three?.low, three?.high]).toEqual([one?.value, one?.low, one?.high])
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
