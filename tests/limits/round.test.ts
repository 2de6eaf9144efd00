import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { meets, ownLimit, publishedLimit, roundingFlips } from '../../lib/limits/index.ts'

const three = ownLimit('air-changes-50', 3, '1/h')

test('a figure just beyond the limit that would be written as the limit is told', () => {
  expect(roundingFlips(3.004, three, 2, 'half-up')).toMatchInlineSnapshot(`
    {
      "rounded": "3.00",
      "roundedMeets": true,
      "sentence": "Rounded, 3.00 ACH50 would meet the limit, at most 3.0 ACH50; the unrounded 3.004 does not meet it. The unrounded number decides.",
    }
  `)
  expect(roundingFlips(3.004, three, 3, 'half-up')).toBeUndefined()
  expect(roundingFlips(2.996, three, 2, 'half-up')).toBeUndefined()
})

test('a figure within the limit that would be written beyond it is told', () => {
  expect(roundingFlips(0.254, ownLimit('flow-50-per-enclosure-area', 0.255, 'cfm/ft2'), 1, 'half-up'))
    .toMatchInlineSnapshot(`
      {
        "rounded": "0.3",
        "roundedMeets": false,
        "sentence": "Rounded, 0.3 cfm50/ft² would not meet the limit, at most 0.255 cfm50/ft²; the unrounded 0.25400 meets it. The unrounded number decides.",
      }
    `)
})

test('seven rounded from below does not meet "less than seven"', () => {
  const seven = publishedLimit('iecc-2009-air-changes')
  if (!seven) throw new Error('the 2009 limit is missing')
  expect(roundingFlips(6.97, seven, 1, 'half-up')?.roundedMeets).toBe(false)
  expect(roundingFlips(6.97, seven, 2, 'half-up')).toBeUndefined()
})

test('what happens to a half decides a half', () => {
  const limit = ownLimit('air-changes-50', 2.5, '1/h')
  expect(roundingFlips(2.55, limit, 1, 'half-up')).toBeUndefined()
  expect(roundingFlips(2.45, ownLimit('air-changes-50', 2.45, '1/h'), 1, 'half-up')?.rounded).toBe('2.5')
  expect(roundingFlips(2.45, ownLimit('air-changes-50', 2.45, '1/h'), 1, 'half-even')).toBeUndefined()
})

/** 1 cfm/ft2 = 18.288 m3/(h.m2) (NIST SP 811): 0.25 cfm/ft2 is 4.572. */
test('the rounded number is compared in the unit it is written in', () => {
  const limit = ownLimit('flow-75-per-enclosure-area', 0.25, 'cfm/ft2')
  expect(roundingFlips(4.56, limit, 1, 'half-up', 'm3/(h.m2)')?.rounded).toBe('4.6')
  expect(roundingFlips(4.56, limit, 2, 'half-up', 'm3/(h.m2)')).toBeUndefined()
})

test('it speaks exactly when the two verdicts differ', () => {
  fc.assert(
    fc.property(fc.double({ min: 2, max: 4, noNaN: true }), fc.integer({ min: 0, max: 4 }), (value, decimals) => {
      const flip = roundingFlips(value, three, decimals, 'half-up')
      const rounded = Math.round(value * 10 ** decimals) / 10 ** decimals
      expect(flip !== undefined).toBe(meets(rounded, three) !== meets(value, three))
    }),
  )
})
