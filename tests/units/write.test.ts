import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readNumber } from '../../lib/units/read.ts'
import { write } from '../../lib/units/write.ts'

const finite = fc.double({ noNaN: true, noDefaultInfinity: true })

describe('rounding the number as written', () => {
  test.each([
    [1.005, 2, '1.01'],
    [2.675, 2, '2.68'],
    [0.285, 2, '0.29'],
    [1.45, 1, '1.5'],
    [0.5, 0, '1'],
    [1.5, 0, '2'],
    [2.5, 0, '3'],
    [-2.5, 0, '-3'],
    [0.05, 1, '0.1'],
    [0.04999, 1, '0.0'],
    [9.995, 2, '10.00'],
    [999.5, 0, '1000'],
    [0.0049, 2, '0.00'],
    [3, 2, '3.00'],
  ])('half-up: %f at %i decimals', (value, decimals, text) => {
    expect(write(value, { decimals })).toBe(text)
  })

  test.each([
    [0.5, 0, '0'],
    [1.5, 0, '2'],
    [2.5, 0, '2'],
    [2.675, 2, '2.68'],
    [2.665, 2, '2.66'],
    [2.50001, 0, '3'],
    [0.05, 1, '0.0'],
    [0.15, 1, '0.2'],
    [-0.5, 0, '0'],
  ])('half-even: %f at %i decimals', (value, decimals, text) => {
    expect(write(value, { decimals, rounding: 'half-even' })).toBe(text)
  })
})

describe('form', () => {
  test('no exponent, however large or small', () => {
    expect(write(1e21)).toBe('1000000000000000000000')
    expect(write(5e-324, { decimals: 3 })).toBe('0.000')
    expect(write(1.5e-7)).toBe('0.00000015')
    expect(write(1.7976931348623157e308, { decimals: 1 })).toMatch(/^1797\d+\.0$/)
  })

  test('no minus zero', () => {
    expect(write(-0)).toBe('0')
    expect(write(-0.001, { decimals: 2 })).toBe('0.00')
  })

  test('thousands separators and marks', () => {
    expect(write(1234567.891, { decimals: 2, grouping: ',' })).toBe('1,234,567.89')
    expect(write(1234567.891, { decimals: 1, grouping: ' ', mark: ',' })).toBe('1 234 567,9')
    expect(write(999, { grouping: true })).toBe('999')
    expect(write(-1020, { grouping: true })).toBe('-1,020')
    expect(write(1020, { grouping: '' })).toBe('1020')
  })

  /** Unicode CLDR, through Intl: Indian lakh grouping, Spanish leaves four digits together. */
  test('a number is written with the marks and groups of its locale, in Latin digits', () => {
    expect(write(1234567.8, { grouping: true, locale: 'de-DE' })).toBe('1.234.567,8')
    expect(write(1234567.8, { grouping: true, locale: 'en-IN' })).toBe('12,34,567.8')
    expect(write(1234.5, { grouping: true, locale: 'es-ES' })).toBe('1234,5')
    expect(write(1234.5, { locale: 'ar-EG' })).toMatch(/^1234.5$/)
  })

  test('what cannot be written is refused', () => {
    expect(() => write(Number.NaN)).toThrow(RangeError)
    expect(() => write(Infinity)).toThrow(RangeError)
    expect(() => write(1, { decimals: 1.5 })).toThrow(RangeError)
    expect(() => write(1, { decimals: -1 })).toThrow(RangeError)
    expect(() => write(1, { grouping: ',', mark: ',' })).toThrow(RangeError)
    // 1,234,5 is no number to anybody.
    expect(() => write(1234.5, { grouping: true, mark: ',' })).toThrow(RangeError)
    expect(() => write(1234.5, { grouping: true, locale: 'de', mark: '.' })).toThrow(RangeError)
    expect(write(1234.5, { grouping: true, locale: 'de', mark: ',' })).toBe('1.234,5')
    expect(() => write(1, { mark: '' })).toThrow(RangeError)
  })
})

/** The platform's own formatter is the oracle: ECMA-402 rounds the exact binary value, so ties are left out. */
test('agrees with Intl.NumberFormat away from ties', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e12, max: 1e12, noNaN: true }),
      fc.integer({ min: 0, max: 6 }),
      (value, decimals) => {
        fc.pre(!write(value).endsWith('5') && value !== 0)
        const options = { minimumFractionDigits: decimals, maximumFractionDigits: decimals }
        const expected = new Intl.NumberFormat('en-US', { ...options, signDisplay: 'negative' }).format(value)
        expect(write(value, { decimals, grouping: ',' })).toBe(expected)
      },
    ),
  )
})

test('all digits written read back as the same number', () => {
  fc.assert(
    fc.property(finite, (value) => {
      expect(readNumber(write(value))).toBe(value === 0 ? 0 : value)
      expect(readNumber(write(value, { grouping: ',', decimals: 2 }))).toBe(Number(write(value, { decimals: 2 })))
    }),
  )
})
