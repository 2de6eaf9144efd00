/** Factors as printed in NIST Special Publication 811 (2008), Appendix B.8. */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type UnitId, convert, unitsLike } from '../../lib/units/convert.ts'
import { symbol } from '../../lib/units/symbol.ts'

describe('factors of NIST SP 811', () => {
  test.each([
    ['ft', 'm', 0.3048],
    ['in', 'm', 0.0254],
    ['ft2', 'm2', 0.09290304],
    ['in2', 'm2', 6.4516e-4],
    ['cm2', 'm2', 1e-4],
    ['ft3', 'm3', 2.831685e-2],
    ['cfm', 'L/s', 0.4719474],
    ['inHg', 'Pa', 3386.389],
    ['inH2O', 'Pa', 249.0889],
  ])('1 %s in %s', (from, to, printed) => {
    expect(convert(1, from, to) / printed).toBeCloseTo(1, 6)
  })

  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [68, 20],
  ])('%f degF is %f degC', (fahrenheit, celsius) => {
    expect(convert(fahrenheit, 'degF', 'degC')).toBe(celsius)
    expect(convert(celsius, 'degC', 'degF')).toBe(fahrenheit)
  })
})

/** Exact by definition: 0.3048³ × 60 m3/h. */
test('cfm in m3/h to the last digit', () => {
  expect(convert(1, 'cfm', 'm3/h')).toBe(1.69901079552)
})

test('flows per area follow from flow over area', () => {
  expect(convert(1, 'cfm/ft2', 'm3/(h.m2)')).toBeCloseTo(1.69901079552 / 0.09290304, 12)
  expect(convert(4, 'cfm/100ft2', 'cfm/ft2')).toBeCloseTo(0.04, 15)
  expect(convert(3.6, 'm3/(h.m2)', 'L/(s.m2)')).toBeCloseTo(1, 15)
})

test('there and back gives the number again, for every pair of like units', () => {
  const all = ['cfm', 'ft', 'ft2', 'ft3', 'Pa', 'degC', 'kg/m3', '1/h', '1', 'cfm/ft2', 'cfm/Pa^n'].flatMap(unitsLike)
  fc.assert(
    fc.property(fc.constantFrom(...all), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (unit, value) => {
      for (const other of unitsLike(unit)) {
        const back = convert(convert(value, unit, other), other, unit)
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(100, Math.abs(value)))
      }
    }),
  )
})

test('what cannot be converted is refused', () => {
  expect(() => convert(1, 'cfm', 'ft2')).toThrowErrorMatchingInlineSnapshot(
    `[RangeError: cfm cannot be written in ft2.]`,
  )
  expect(() => convert(1, 'gpm', 'cfm')).toThrowErrorMatchingInlineSnapshot(`[RangeError: "gpm" is not a known unit.]`)
  expect(() => unitsLike('toString')).toThrow(RangeError)
})

test('units are written with the symbols of NIST SP 811, and as the trade writes cfm', () => {
  const ids: UnitId[] = [
    'cfm',
    'm3/h',
    'in2',
    'cfm/100ft2',
    'm3/(h.m2)',
    'L/(s.m2)',
    'm3/h/Pa^n',
    'degF',
    '1',
    '%',
    'inH2O',
  ]
  expect(ids.map(symbol)).toEqual([
    'cfm',
    'm³/h',
    'in²',
    'cfm/100 ft²',
    'm³/(h·m²)',
    'L/(s·m²)',
    'm³/h/Paⁿ',
    '°F',
    '',
    '%',
    'inH₂O',
  ])
})
