/**
 * JCGM 100:2008, 5.1.2: independent parts in quadrature, worked by hand. A reading has a random part of its own, also one
 * that was taken once: 0.2 Pa of its pressure in calm weather and 0.5 % of its flow (common practice, no source).
 */
import { describe, expect, test } from 'vitest'
import { reduce } from '../../lib/reduce/reduce.ts'
import { fakeRegression, fakeSheet, wholeBuilding } from './sheets.ts'

const half = ({ low, high, value }: { low?: number | undefined; high?: number | undefined; value: number }) =>
  (high! - low!) / (2 * value)

const logHalf = ({ low, high }: { low?: number | undefined; high?: number | undefined }) => Math.log(high! / low!) / 2

/** Standard uncertainty of one reading by itself, at a pressure, with an exponent of 0.65. */
const own = (pressure: number) => Math.hypot(0.005, (0.65 * 0.2) / pressure)

describe('one point', () => {
  test('at 50 Pa: 5 % of flow, 0.65 times 1 % of pressure, and the scatter of the reading', () => {
    // Freedom: 1 of the calm weather taken, × (6.673e-4 / 3.176e-5)² = 441: coverage factor 2.
    expect(half(reduce(fakeSheet()).figures['flow-50']!)).toBeCloseTo(Math.hypot(0.05, 0.65 * 0.01, 2 * own(50)), 12)
  })

  test('at 20 Pa: the floor of 0.25 Pa is 1.25 %, and the exponent joins in', () => {
    const sheet = fakeSheet({ points: [{ pressure: -20, flow: 500 }] })
    const expected = Math.hypot(0.05, 0.65 * 0.0125, 2 * 0.05 * Math.log(2.5), 2 * own(20))
    expect(half(reduce(sheet).figures['flow-50']!)).toBeCloseTo(expected, 12)
    const bare = reduce(sheet, { instrumentUncertainty: false }).figures['flow-50']!
    expect(half(bare)).toBeCloseTo(2 * 0.05 * Math.log(2.5), 12)
  })

  test('the volume joins in air changes', () => {
    const building = { ...wholeBuilding, volumePercent: 3 }
    const { figures } = reduce(fakeSheet({ building }))
    expect(half(figures['air-changes-50']!)).toBeCloseTo(Math.hypot(0.05, 0.0065, 0.03, 2 * own(50)), 12)
    expect(half(figures['flow-50-per-enclosure-area']!)).toBeCloseTo(half(figures['air-changes-50']!), 12)
  })

  // JCGM 100:2008, 7.1.4 (from memory): every part of an uncertainty is listed with the result.
  test('the note of a figure names the volume where it has a part in the limits, and only there', () => {
    const building = { ...wholeBuilding, volumePercent: 3 }
    const { figures } = reduce(fakeSheet({ building, weatherShieldingFactor: 0.6 }))
    const named = Object.keys(figures).filter((id) => figures[id]?.note?.includes('the size of the building'))
    // The floor area cancels out of the infiltration credit: NL is divided by it.
    expect(named.toSorted()).toEqual([
      'air-changes-50',
      'flow-10-per-enclosure-area',
      'flow-4-per-enclosure-area-without-floor',
      'flow-50-per-enclosure-area',
      'flow-50-per-floor-area',
      'flow-75-per-enclosure-area',
      'normalized-leakage',
      'normalized-leakage-area',
      'specific-leakage-area',
    ])
    // Squares in 1e-6: device 25² = 625, size 15² = 225, scatter 31.76, gauge 3.25² = 10.56; together 892.3.
    expect(figures['air-changes-50']?.note).toMatch(
      /Limits, by share of the variance: the flow device 70 %, the size of the building 25 %, wind and the scatter of the readings 4 %, the pressure gauge 1 %; coverage factor 2\./,
    )
    const ducts = reduce(fakeSheet({ subject: 'ducts', building })).figures
    const duct = Object.keys(ducts).filter((id) => ducts[id]?.note?.includes('the size of the building'))
    expect(duct.toSorted()).toEqual(['duct-flow-25-per-floor-area', 'duct-qn'])
    const exact = reduce(fakeSheet({ building: wholeBuilding })).figures
    expect(exact['air-changes-50']?.note).not.toContain('size')
  })
})

const total = (values: number[]) => values.reduce((sum, value) => sum + value, 0)

describe('regression', () => {
  const sheet = fakeRegression()
  const [alone, both] = [reduce(sheet, { instrumentUncertainty: false }), reduce(sheet)]
  const n = both.fit!.exponent
  const pressures = sheet.points.map(({ pressure }) => Math.abs(pressure))
  const x = pressures.map((pressure) => Math.log(pressure))
  const mean = total(x) / 6
  const sxx = total(x.map((one) => (one - mean) ** 2))
  /** Weights of least squares: of the height of the line at ln of a pressure, and of its slope. */
  const weights = (pressure: number) => x.map((one) => 1 / 6 + ((Math.log(pressure) - mean) * (one - mean)) / sxx)
  const slopes = x.map((one) => (one - mean) / sxx)
  const gauge = pressures.map((pressure) => (n * Math.max(0.01, 0.25 / pressure)) / 2)
  const variances = pressures.map((pressure) => 0.005 ** 2 + ((n * 0.2) / pressure) ** 2)

  const single = (sizes: number[]) => sizes.map((size, i) => x.map((_, j) => (i === j ? size : 0)))
  /** Weighted squares of what errors leave beside the line: through M = 1 - X (X'X)⁻¹ X'. */
  const squaresLeft = (errors: number[][]) => {
    const left = (of: number[]) => of.map((one, i) => one - total(weights(pressures[i]!).map((w, j) => w * of[j]!)))
    return total(errors.map((of) => total(left(of).map((one, i) => one ** 2 / variances[i]!))))
  }
  const logs = sheet.points.map((point) => Math.log('flow' in point ? point.flow : NaN))
  // Six errors of one reading each, and that of the gauge, which tilts the line; that of the device leaves nothing.
  const leftOver = squaresLeft(single(variances.map(Math.sqrt)))
  const ratio = squaresLeft([logs]) / (leftOver + squaresLeft([gauge]))
  const scatterWords = 'wind and the scatter of the readings'
  const pooled = (1 + 4 * ratio) / 5
  const factor = (pooled + Math.max(pooled, ratio)) / 2
  const even = (Math.max(0, factor - 1) * leftOver) / squaresLeft(single(x.map(() => 1)))
  const wind = (w: number[]) => {
    const expected = total(w.map((one, i) => one ** 2 * variances[i]!))
    const alike = Math.min(1, factor) * expected + even * total(w.map((one) => one ** 2))
    return Math.sqrt(Math.max(factor * expected, alike))
  }
  const carried = (w: number[]) => Math.abs(total(w.map((one, i) => one * gauge[i]!)))

  test('device, gauge and scatter in quadrature, each as it bears on the line, and the note says so', () => {
    const { low, high, budget, note } = both.figures['flow-50']!
    const [u1, u2, u5] = [0.025, carried(weights(50)), wind(weights(50))]
    expect(Object.fromEntries(budget!.map(({ part, u }) => [part, Number(u.toFixed(12))]))).toEqual({
      device: u1,
      gauge: Number(u2.toFixed(12)),
      wind: Number(u5.toFixed(12)),
    })
    // 5 degrees of freedom × (all / scatter)⁴ are more than 60: coverage factor 2.
    expect(5 * (Math.hypot(u1, u2, u5) / u5) ** 4).toBeGreaterThan(60)
    expect(logHalf({ low, high })).toBeCloseTo(2 * Math.hypot(u1, u2, u5), 12)
    const named = Object.entries({ 'the flow device': u1, 'the pressure gauge': u2, [scatterWords]: u5 })
      .toSorted(([, one], [, other]) => other - one)
      .map(([part, u]) => `${part} ${Math.round(100 * (u / Math.hypot(u1, u2, u5)) ** 2)} %`)
    expect(note).toBe(
      `Temperatures not given: no air correction. Limits, by share of the variance: ${named.join(', ')}; coverage factor 2. Few baseline readings: the weather is taken as calm beside them, 0.2 Pa.`,
    )
    expect(alone.figures['flow-50']?.note).toBe(
      'Temperatures not given: no air correction. Limits: the scatter of the points alone.',
    )
  })

  test('the exponent: the device shifts every flow of its range alike and has no part, the gauge tilts the line', () => {
    const { low, high, budget } = both.figures['leakage-exponent']!
    const [gaugePart, windPart] = [carried(slopes), wind(slopes)]
    expect(budget!.map(({ part }) => part).toSorted()).toEqual(['gauge', 'wind'])
    // floor(5 × (all / scatter)⁴) = 5: Student's t is 2.5706.
    expect(Math.floor(5 * (Math.hypot(gaugePart, windPart) / windPart) ** 4)).toBe(5)
    expect((high! - low!) / 2).toBeCloseTo(2.570581836 * Math.hypot(gaugePart, windPart), 9)
  })

  test('the fit stays alone, and its figures are its own where the scatter alone is asked for', () => {
    expect(both.fit).toEqual(alone.fit)
    const { coefficientLow, coefficientHigh, exponentLow, exponentHigh } = both.fit!
    const limits = (id: string) => [alone.figures[id]?.low, alone.figures[id]?.high]
    expect(limits('leakage-coefficient')).toEqual([coefficientLow, coefficientHigh])
    expect(limits('leakage-exponent')).toEqual([exponentLow, exponentHigh])
    for (const id of ['leakage-exponent', 'leakage-coefficient']) {
      expect(both.figures[id]?.value).toBe(alone.figures[id]?.value)
    }
  })
})
