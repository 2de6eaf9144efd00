import { expect, test } from 'vitest'
import { keeps, sideOf } from '../../lib/units/same.ts'

test('the last bits of a double are no distance, a billionth and a half is one', () => {
  expect((80 * 100) / 2000).toBe(4)
  expect(sideOf(4.000000000000001, 4)).toBe(0)
  expect([sideOf(4 * (1 + 1.5e-9), 4), sideOf(4 * (1 - 1.5e-9), 4)]).toEqual([1, -1])
  expect([sideOf(0, 0), sideOf(1e-30, 0), sideOf(-4, -4.0000000000001)]).toEqual([0, 1, 0])
})

test('at most is kept by the bound itself, less than is not', () => {
  expect([keeps(7.000000000000001, 7), keeps(6.999999999999999, 7, '<'), keeps(6.9, 7, '<')]).toEqual([
    true,
    false,
    true,
  ])
  expect(keeps(Number.NaN, 7)).toBe(false)
})
