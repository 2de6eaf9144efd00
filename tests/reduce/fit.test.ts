/** The certified digits of NIST's Norris are met in tests/published. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { errorAt, fitLine } from '../../lib/reduce/fit.ts'

const slopes = fc.double({ min: -5, max: 5, noNaN: true })

test('a shift of both axes by a million changes the line by no more than rounding', () => {
  const xs = [2.3, 3.0, 3.4, 3.7, 3.9, 4.1]
  const ys = [5.47, 5.9, 6.1, 6.44, 6.53, 6.56]
  const near = fitLine(xs, ys)
  const far = fitLine(
    xs.map((x) => x + 1e6),
    ys.map((y) => y + 1e6),
  )
  expect(far.slope).toBeCloseTo(near.slope, 8)
  expect(far.residual).toBeCloseTo(near.residual, 8)
  expect(far.correlation).toBeCloseTo(near.correlation, 8)
})

test('points on a line give that line, without scatter', () => {
  fc.assert(
    fc.property(slopes, slopes, (slope, intercept) => {
      const xs = [1, 2, 4, 7, 11]
      const line = fitLine(
        xs,
        xs.map((x) => intercept + slope * x),
      )
      expect(line.slope).toBeCloseTo(slope, 10)
      expect(line.intercept).toBeCloseTo(intercept, 9)
      expect(line.residual).toBeLessThan(1e-12)
    }),
  )
})

/** Identity of least squares: the standard error of the height at x = 0 is that of the intercept. */
test('standard errors agree where they must', () => {
  const line = fitLine([1, 2, 3, 5], [1.1, 1.9, 3.2, 4.8])
  expect(errorAt(line, 0)).toBeCloseTo(line.interceptError, 14)
  expect(errorAt(line, line.meanX)).toBeCloseTo(line.residual / 2, 14)
})
