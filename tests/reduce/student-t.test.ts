/** Oracle: @stdlib/stats-base-dists-t-quantile. */
import quantile from '@stdlib/stats-base-dists-t-quantile'
import { expect, test } from 'vitest'
import { studentT } from '../../lib/reduce/student-t.ts'

test('every value of the table', () => {
  for (let df = 1; df <= 20; df++) expect(studentT(df) / quantile(0.975, df)).toBeCloseTo(1, 9)
})

test('the expansion, from 21 to 5,000 degrees of freedom', () => {
  for (let df = 21; df <= 5000; df++) {
    expect(Math.abs(studentT(df) / quantile(0.975, df) - 1)).toBeLessThan(1e-7)
  }
})

/** Printed in any table of Student's t, two-sided 95 %. */
test.each([
  [1, '12.706'],
  [4, '2.776'],
  [10, '2.228'],
  [30, '2.042'],
  [120, '1.980'],
])('printed: %i degrees of freedom, %s', (df, printed) => {
  expect(studentT(df).toFixed(3)).toBe(printed)
})
