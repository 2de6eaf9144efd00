import * as fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { readNumber } from '../../lib/units/read.ts'

test.each([
  ['433', 433],
  [' 0.65 ', 0.65],
  ['.5', 0.5],
  ['5.', 5],
  ['-2.5', -2.5],
  ['−2,5', -2.5],
  ['– 2', -2],
  ['+3', 3],
  ['1,020', 1020],
  ['1,020.5', 1020.5],
  ['1.020,5', 1020.5],
  ['1.234.567', 1234567],
  ['1,234,567', 1234567],
  ["1'020.5", 1020.5],
  ['1 020,5', 1020.5],
  ['1\u00A0020', 1020],
  ['1\u202F020,25', 1020.25],
  ['0,65', 0.65],
  ['0,650', 0.65],
  ['12,5', 12.5],
  ['1,2345', 1.2345],
  ['1.234', 1.234],
  ['1.62e-4', 1.62e-4],
  ['-0', 0],
])('%j is %f', (text, value) => {
  expect(readNumber(text)).toBe(value)
})

test.each([
  ['', 'empty'],
  ['   ', 'empty'],
  ['abc', 'not a number'],
  ['-', 'not a number'],
  ['.', 'not a number'],
  ['1,23,456', 'not a number'],
  ['1.2.3', 'not a number'],
  ['50 Pa', 'not a number'],
  ['10 20', 'not a number'],
  ['1,234 567', 'not a number'],
  ['Infinity', 'not a number'],
  ['NaN', 'not a number'],
  ['0x10', 'not a number'],
  ['1e999', 'too large'],
])('%j is refused: %s', (text, code) => {
  expect(readNumber(text)).toMatchObject({ code, message: expect.stringMatching(/\.$/) })
})

test('any text gives a finite number or a reason', () => {
  const near = fc.string({ unit: fc.constantFrom(...'0123456789.,-−+e \u00A0\'"x') })
  fc.assert(
    fc.property(fc.oneof(near, fc.string()), (text) => {
      const read = readNumber(text)
      expect(typeof read === 'number' ? Number.isFinite(read) : read.message.length > 0).toBe(true)
    }),
  )
})

describe('where a decimal comma is written', () => {
  it.each([
    ['51,3', 51.3],
    ['0,650', 0.65],
    ['1.020,5', 1020.5],
    ['15810', 15810],
    ['1.234.567', 1234567],
    ['4,8160', 4.816],
  ])('%s is %d', (text, value) => {
    expect(readNumber(text, 'both')).toBe(value)
  })

  it.each(['1,020', '1.020', '-51,300', '15.810'])('%s can be read two ways, and is named', (text) => {
    expect(readNumber(text, 'both')).toMatchObject({
      code: 'two ways',
      message: expect.stringContaining(text.replace('-', '')),
    })
  })

  it('names what to type instead, and takes both', () => {
    expect(readNumber('1,020', 'both')).toMatchObject({ message: '“1,020” can be read two ways: type 1020 or 1,0200.' })
    expect([readNumber('1020', 'both'), readNumber('1,0200', 'both')]).toEqual([1020, 1.02])
  })
})

it('elsewhere a comma before three digits parts thousands', () => {
  expect([readNumber('1,020'), readNumber('1.020')]).toEqual([1020, 1.02])
})
