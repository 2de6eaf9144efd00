/**
 * The weighted line of organic correlation against R 4.2.2 (R Core Team): weighted variances by cov.wt of its stats package,
 * the slope by uniroot, standard uncertainties by JCGM 100, 5.1.2, with differences in place of derivatives. wloc.R holds the
 * other half, wloc-answers.json is what it printed; R is not needed to run this test.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { heightError, wlocLine } from '../../../lib/reduce/wloc.ts'
import { off } from '../support.ts'

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'))
const cases = read('wloc.json') as Record<string, [x: number, y: number, ux: number, uy: number][]>
const answers = read('wloc-answers.json') as Record<string, Record<string, number>>

test('R has answered each case', () => expect(Object.keys(answers)).toEqual(Object.keys(cases)))

describe.each(Object.entries(cases))('%s', (name, rows) => {
  const line = wlocLine(rows.map(([x, y, ux, uy]) => ({ x, y, ux, uy })))
  const { slope, intercept, slopeError, interceptError, covariance, scatter } = line
  const found: Record<string, number> = {
    slope,
    intercept,
    slopeError,
    interceptError,
    covariance,
    at4: heightError(line, Math.log(4)),
    at50: heightError(line, Math.log(50)),
    scatter,
  }

  test.each(Object.entries(answers[name]!))('%s', (key, expected) => {
    expect(off(found[key], expected)).toBeLessThan(1e-6)
  })
})
