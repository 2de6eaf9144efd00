import { assert, double, option, property } from 'fast-check'
import { expect, test } from 'vitest'
import { axis, inLimits, onAxis } from '../../lib/results/scale.ts'

test('limits align: the limit stands at two thirds whatever its size', () => {
  expect(inLimits({ value: 2.86, low: 2.69, high: 3.03, limit: 3 }).limit).toBe(
    inLimits({ value: 0.17, low: 0.16, high: 0.18, limit: 0.28 }).limit,
  )
})

test('a value at half its limit stands half way to it', () => {
  expect(inLimits({ value: 1.5, low: 1, high: 2, limit: 3 }).value).toBeCloseTo(1 / 3, 12)
})

test('an interval far beyond the limit is drawn to the edge and marked as reaching past it', () => {
  expect(inLimits({ value: 12, low: 11, high: 13, limit: 3 })).toEqual({
    value: 1,
    low: 1,
    high: 1,
    limit: 2 / 3,
    beyond: true,
  })
})

test('the axis around 2.86 with limit 3 has round ticks', () => {
  expect(axis(2.69, 3.03, 3)).toEqual({ from: 2.5, to: 3.5, ticks: [2.5, 3, 3.5], decimals: 1 })
})

test('an axis without a limit shows the interval', () => {
  expect(axis(716, 792)).toEqual({ from: 700, to: 800, ticks: [700, 800], decimals: 0 })
})

test('every axis contains interval and limit, between two and seven ticks', () => {
  const positive = double({ min: 1e-6, max: 1e6, noNaN: true })
  assert(
    property(positive, positive, option(positive, { nil: undefined }), (a, b, limit) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)]
      const scale = axis(low, high, limit)
      expect(scale.ticks.length).toBeGreaterThanOrEqual(2)
      expect(scale.ticks.length).toBeLessThanOrEqual(7)
      for (const x of [low, high, limit ?? low]) {
        expect(scale.from).toBeLessThanOrEqual(x)
        expect(scale.to).toBeGreaterThanOrEqual(x)
        expect(onAxis(x, scale)).toBeGreaterThanOrEqual(0)
      }
      expect(scale.ticks.every((tick, i) => i === 0 || tick > scale.ticks[i - 1]!)).toBe(true)
    }),
  )
})
