/** Worked by hand from JCGM 100:2008, 5.1.2 and 5.2.2. */
import { expect, test } from 'vitest'
import { reduction } from '../../lib/reduce/reduction.ts'

const about = (value: number, half: number, unit = 'cfm') => ({ value, unit, low: value - half, high: value + half })

test('absolute and percent, in the unit of the later test', () => {
  const { absolute, percent } = reduction({ value: 2549, unit: 'm3/h' }, { value: 750, unit: 'cfm' })
  expect(absolute.value).toBeCloseTo(2549 / 1.699010796 - 750, 5)
  expect(absolute.unit).toBe('cfm')
  expect(percent.value).toBeCloseTo(100 * (1 - 750 / (2549 / 1.699010796)), 5)
  expect(absolute.low).toBeUndefined()
})

test('independent: √(75² + 36²) = 83.19 cfm; 60 % × √(0.05² + 0.04²) = 3.842 %', () => {
  const { absolute, percent } = reduction(about(1500, 75), about(900, 36))
  expect(absolute.high! - absolute.value).toBeCloseTo(83.19, 2)
  expect(percent.value).toBe(40)
  expect(percent.value - percent.low!).toBeCloseTo(3.842, 3)
})

test('what both share cancels in the percentage: all of 4 % leaves 60 % × 3 % = 1.8 %', () => {
  const { absolute, percent } = reduction(about(1500, 75), about(900, 36), { shared: 0.04 })
  expect(percent.high! - percent.value).toBeCloseTo(1.8, 9)
  // √((1500 × 0.03)² + 0² + (0.04 × 600)²) = 51
  expect(absolute.high! - absolute.value).toBeCloseTo(51, 9)
  expect(percent.note).toContain('4 % of either')
})

test('never more shared than the smaller has', () => {
  expect(reduction(about(1500, 75), about(900, 36), { shared: 0.5 })).toEqual(
    reduction(about(1500, 75), about(900, 36), { shared: 0.04 }),
  )
})

test('values that are none, and units of another kind, are refused', () => {
  expect(() => reduction(about(0, 0), about(900, 36))).toThrow('above zero')
  expect(() => reduction(about(1, 0), about(NaN, 36))).toThrow('above zero')
  expect(() => reduction(about(1500, 75), about(900, 36, '1/h'))).toThrow('cannot be written')
})

test('a share or limits that are none are refused, not turned into NaN', () => {
  for (const shared of [NaN, Infinity, -0.1]) {
    expect(() => reduction(about(1500, 75), about(900, 36), { shared })).toThrow('share')
  }
  for (const half of [NaN, Infinity, -5]) {
    expect(() => reduction(about(1500, half), about(900, 36))).toThrow('limits')
    expect(() => reduction(about(1500, 75), about(900, half))).toThrow('limits')
  }
})
