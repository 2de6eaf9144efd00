/** JCGM 100:2008, 5.1.2: independent parts in quadrature, worked by hand. */
import { describe, expect, test } from 'vitest'
import { reduce } from '../../lib/reduce/reduce.ts'
import { fakeRegression, fakeSheet, wholeBuilding } from './sheets.ts'

const half = ({ low, high, value }: { low?: number | undefined; high?: number | undefined; value: number }) =>
  (high! - low!) / (2 * value)

const logHalf = ({ low, high }: { low?: number | undefined; high?: number | undefined }) => Math.log(high! / low!) / 2

describe('one point', () => {
  test('at 50 Pa: 5 % of flow and 0.65 times 1 % of pressure', () => {
    expect(half(reduce(fakeSheet()).figures['flow-50']!)).toBeCloseTo(Math.hypot(0.05, 0.65 * 0.01), 12)
  })

  test('at 20 Pa: the floor of 0.25 Pa is 1.25 %, and the exponent joins in', () => {
    const sheet = fakeSheet({ points: [{ pressure: -20, flow: 500 }] })
    const expected = Math.hypot(0.05, 0.65 * 0.0125, 2 * 0.05 * Math.log(2.5))
    expect(half(reduce(sheet).figures['flow-50']!)).toBeCloseTo(expected, 12)
    const bare = reduce(sheet, { instrumentUncertainty: false }).figures['flow-50']!
    expect(half(bare)).toBeCloseTo(2 * 0.05 * Math.log(2.5), 12)
  })

  test('the volume joins in air changes', () => {
    const building = { ...wholeBuilding, volumePercent: 3 }
    const { figures } = reduce(fakeSheet({ building }))
    expect(half(figures['air-changes-50']!)).toBeCloseTo(Math.hypot(0.05, 0.0065, 0.03), 12)
    expect(half(figures['flow-50-per-enclosure-area']!)).toBeCloseTo(Math.hypot(0.05, 0.0065, 0.03), 12)
  })

  // JCGM 100:2008, 7.1.4 (from memory): every part of an uncertainty is listed with the result.
  test('the note of a figure names the volume where it has a part in the limits, and only there', () => {
    const building = { ...wholeBuilding, volumePercent: 3 }
    const { figures } = reduce(fakeSheet({ building, weatherShieldingFactor: 0.6 }))
    const named = Object.keys(figures).filter((id) => figures[id]?.note?.includes('size of the building (± 3 %)'))
    // The floor area cancels out of the infiltration credit: NL is divided by it.
    expect(named.toSorted()).toEqual([
      'air-changes-50',
      'flow-50-per-enclosure-area',
      'flow-50-per-floor-area',
      'flow-75-per-enclosure-area',
      'normalized-leakage',
      'specific-leakage-area',
    ])
    expect(figures['air-changes-50']?.note).toMatch(
      /Limits: the assumed exponent and .* Pa\) and the size of the building \(± 3 %\), in quadrature\.$/,
    )
    const ducts = reduce(fakeSheet({ subject: 'ducts', building })).figures
    const duct = Object.keys(ducts).filter((id) => ducts[id]?.note?.includes('size of the building (± 3 %)'))
    expect(duct.toSorted()).toEqual(['duct-flow-25-per-floor-area', 'duct-qn'])
    const exact = reduce(fakeSheet({ building: wholeBuilding })).figures
    expect(exact['air-changes-50']?.note).not.toContain('size')
  })
})

describe('regression', () => {
  const sheet = fakeRegression()
  test('the instrument adds in quadrature to the scatter, and the note says so', () => {
    const [alone, both] = [reduce(sheet, { instrumentUncertainty: false }), reduce(sheet)].map(
      (report) => report.figures['flow-50']!,
    )
    const n = reduce(sheet).fit!.exponent
    expect(logHalf(both!)).toBeCloseTo(Math.hypot(logHalf(alone!), 0.05, n * 0.01), 12)
    expect(both?.note).toMatchInlineSnapshot(
      `"Temperatures not given: no air correction. Limits: the scatter of the points and the instrument (± 5 % flow, ± 1 % or 0.25 Pa), in quadrature."`,
    )
    expect(alone?.note).toMatchInlineSnapshot(
      `"Temperatures not given: no air correction. Limits: the scatter of the points alone."`,
    )
  })

  test('the fit and its figures stay alone', () => {
    const [alone, both] = [reduce(sheet, { instrumentUncertainty: false }), reduce(sheet)]
    expect(both.fit).toEqual(alone.fit)
    for (const id of ['leakage-exponent', 'leakage-coefficient']) expect(both.figures[id]).toEqual(alone.figures[id])
    expect([both.figures['leakage-coefficient']?.low, both.figures['leakage-coefficient']?.high]).toEqual([
      both.fit?.coefficientLow,
      both.fit?.coefficientHigh,
    ])
  })
})
