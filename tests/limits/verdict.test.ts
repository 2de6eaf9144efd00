import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { meets, ownLimit, publishedLimit, verdict, type Limit, type Verdict } from '../../lib/limits/index.ts'

const three = ownLimit('air-changes-50', 3, '1/h')
const published = (id: string): Limit => {
  const limit = publishedLimit(id)
  if (!limit) throw new Error(`no limit ${id}`)
  return limit
}

/**
 * A city's archived air-leakage certificate: pressurizing 0.2626 and depressurizing 0.2343 cfm75/ft2 of enclosure, mean
 * 0.248, entered as meeting 0.25 cfm75/ft2.
 */
test('the pair of a published certificate: the mean meets 0.25, the pressurizing test alone would not', () => {
  const limit = published('army-corps-per-enclosure-area')
  const mean = (0.2626 + 0.2343) / 2
  expect(mean).toBeCloseTo(0.248, 3)
  expect(verdict({ value: mean }, limit).meets).toBe(true)
  expect(verdict({ value: 0.2343 }, limit).meets).toBe(true)
  expect(verdict({ value: 0.2626 }, limit).meets).toBe(false)
})

/**
 * U.S. Environmental Protection Agency, worked example of a leakage limit (its title is not recorded here): an apartment of
 * 1,000 ft2 with 1,000 ft2 of walls has 3,000 ft2 on six sides; at 0.30 cfm50/ft2 it may leak 900 cfm at 50 Pa.
 */
test('0.30 cfm50/ft2 of six sides allows a 1,000 ft2 apartment with 1,000 ft2 of walls 900 cfm', () => {
  const limit = published('iecc-2021-per-enclosure-area-attached-or-small')
  const sixSides = 1000 + 1000 + 1000
  expect(limit.value * sixSides).toBeCloseTo(900, 10)
  expect(verdict({ value: 900 / sixSides, unit: 'cfm/ft2' }, limit).meets).toBe(true)
  expect(verdict({ value: 900.001 / sixSides, unit: 'cfm/ft2' }, limit).meets).toBe(false)
})

/** IECC 2009, 402.4.2.1: "less than seven air changes per hour"; later editions: "not exceeding". */
test('less than seven is not met by seven, at most five is met by five', () => {
  expect(verdict({ value: 7 }, published('iecc-2009-air-changes')).meets).toBe(false)
  expect(verdict({ value: 6.999999 }, published('iecc-2009-air-changes')).meets).toBe(true)
  expect(verdict({ value: 5 }, published('iecc-2021-air-changes')).meets).toBe(true)
})

/**
 * JCGM 106:2012, clause 7 (number from memory): with a normal distribution the probability of conformity is Phi((T - y) / u). Values of Phi from
 * R 4.2.2, pnorm(1) = 0.841344746068543, pnorm(-0.5) = 0.308537538725987, pnorm(2) = 0.977249868051821. The interval of a
 * figure without degrees of freedom has the coverage factor 2 (JCGM 100:2008, 6.3.3).
 */
test('the probability of conformity takes the half of the interval on the side of the limit', () => {
  const k = 2
  const below = verdict({ value: 2.8, low: 1, high: 2.8 + 0.2 * k }, three)
  expect(below.probability).toBeCloseTo(0.841344746068543, 12)
  const above = verdict({ value: 3.1, low: 3.1 - 0.2 * k, high: 9 }, three)
  expect(above.probability).toBeCloseTo(0.308537538725987, 12)
  expect(verdict({ value: 3, low: 2.9, high: 3.1 }, three).probability).toBe(0.5)
  expect(verdict({ value: 2.8, low: 2.8, high: 3 }, three).probability).toBeCloseTo(0.977249868051821, 12)
})

/** JCGM 106:2012, clause 8 (number from memory): guarded acceptance with a guard band of one expanded uncertainty. */
test('the interval lies within, across or beyond the limit', () => {
  expect(verdict({ value: 2.5, low: 2.2, high: 3 }, three).guarded).toBe('below')
  expect(verdict({ value: 2.9, low: 2.6, high: 3.2 }, three).guarded).toBe('between')
  expect(verdict({ value: 3.2, low: 3, high: 3.4 }, three).guarded).toBe('between')
  expect(verdict({ value: 3.4, low: 3.1, high: 3.7 }, three).guarded).toBe('above')
})

test('without an interval there is a verdict and no confidence', () => {
  const plain = verdict({ value: 2.9 }, three)
  expect(plain).not.toHaveProperty('probability')
  expect(plain).not.toHaveProperty('guarded')
})

test('an interval of no width leaves no doubt', () => {
  expect(verdict({ value: 3, low: 3, high: 3 }, three)).toMatchObject({ probability: 1, guarded: 'below' })
  expect(verdict({ value: 4, low: 4, high: 4 }, three)).toMatchObject({ probability: 0, guarded: 'above' })
})

/** NIST SP 811: 1 ft = 0.3048 m exactly, so 1 cfm/ft2 = 0.3048 m/min = 18.288 m3/(h.m2). */
test('a figure in another unit is compared in the limit’s unit, and the limit itself meets it', () => {
  const limit = published('army-corps-per-enclosure-area')
  const bound = 0.25 * 18.288
  expect(verdict({ value: bound, unit: 'm3/(h.m2)' }, limit)).toMatchObject({ meets: true, value: 0.25 })
  expect(verdict({ value: bound * (1 + 2e-9), unit: 'm3/(h.m2)' }, limit).meets).toBe(false)
  expect(verdict({ value: 4, low: 3.5, high: 4.5, unit: 'm3/(h.m2)' }, limit).guarded).toBe('below')
  expect(() => verdict({ value: 4, unit: 'Pa' }, limit)).toThrow('cannot be written in')
})

test('numbers that cannot be compared are refused', () => {
  expect(() => verdict({ value: Number.NaN }, three)).toThrow(RangeError)
  expect(() => verdict({ value: 2, low: 3, high: 4 }, three)).toThrow('does not hold')
})

const text = (result: Verdict) => result.sentences.map((line) => `${line.code}: ${line.text}`)

test('the sentences: the code’s verdict first, the confidence beside it, the caution last', () => {
  const limit = published('iecc-2021-air-changes-prescriptive-zones-3-8')
  expect(text(verdict({ value: 2.9, low: 2.6, high: 3.2 }, limit))).toMatchInlineSnapshot(`
    [
      "meets: 2.90 ACH50 meets the limit, at most 3.0 ACH50 (IECC 2021, R402.4.1.3; prescriptive path).",
      "condition: The verdict holds only for zones 3 to 8: the test does not say so.",
      "probability: Chance that the true value meets it, from the uncertainty of the test: 75 %.",
      "between: The limit lies inside the 95 % interval: a repeated test may come out on the other side.",
      "caution: Check the edition your authority enforces, and its local amendments.",
    ]
  `)
  expect(text(verdict({ value: 3.00004 }, limit))[0]).toMatchInlineSnapshot(
    `"misses: 3.00004 ACH50 does not meet the limit, at most 3.0 ACH50 (IECC 2021, R402.4.1.3; prescriptive path)."`,
  )
  expect(text(verdict({ value: 7 }, published('iecc-2009-air-changes')))[0]).toMatchInlineSnapshot(
    `"misses: 7.00 ACH50 does not meet the limit, less than 7.0 ACH50 (IECC 2009, 402.4.2.1; testing option)."`,
  )
  expect(text(verdict({ value: 3.5, low: 3.2, high: 3.9 }, published('iecc-2012-ducts-total')))).toMatchInlineSnapshot(`
    [
      "meets: 3.50 cfm25/100 ft² meets the limit, at most 4.0 cfm25/100 ft² (IECC 2012, R403.2.2; finished work, total leakage).",
      "condition: The verdict holds only for total leakage; finished work: the test does not say so.",
      "probability: Chance that the true value meets it, from the uncertainty of the test: 99.4 %.",
      "below: The whole 95 % interval lies within the limit.",
      "from-memory: This number or its clause is from memory: look it up before you rely on it.",
      "caution: Check the edition your authority enforces, and its local amendments.",
    ]
  `)
  expect(text(verdict({ value: 0.31, low: 0.3099, high: 0.3101 }, published('iecc-2021-per-enclosure-area'))))
    .toMatchInlineSnapshot(`
      [
        "misses: 0.3100 cfm50/ft² does not meet the limit, at most 0.28 cfm50/ft² (IECC 2021, R402.4.1.2; any compliance path, per area of the dwelling unit enclosure).",
        "probability: Chance that the true value meets it, from the uncertainty of the test: less than 0.1 %.",
        "above: The whole 95 % interval lies beyond the limit.",
        "caution: Check the edition your authority enforces, and its local amendments.",
      ]
    `)
})

test('the probability falls as the figure grows, and passes one half at the limit', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 10, noNaN: true }),
      fc.double({ min: 0.01, max: 2, noNaN: true }),
      (value, half) => {
        const at = verdict({ value, low: value - half, high: value + half }, three)
        const more = verdict({ value: value * 1.05, low: value * 1.05 - half, high: value * 1.05 + half }, three)
        // Far from the limit both are 1 but for rounding.
        expect(more.probability).toBeLessThanOrEqual((at.probability ?? Number.NaN) + 1e-14)
        expect((at.probability ?? Number.NaN) >= 0.5).toBe(meets(value, three))
        expect(at.guarded === 'below').toBe(value + half <= 3 * (1 + 1e-9))
      },
    ),
  )
})

/** The exact fraction is the limit: 80 cfm over 2,000 ft2 is 4 cfm per 100 ft2, whatever a double makes of it. */
test('a number within a billionth of the limit is the limit, in the verdict and in every text', () => {
  const four = published('iecc-2021-ducts-total')
  const found = verdict({ value: 4.000000000000001, low: 3.7, high: 4.3 }, four)
  expect(found).toMatchObject({ meets: true, value: 4, probability: 0.5 })
  expect(found.sentences[0]?.text).toContain('4.00 cfm25/100 ft² meets the limit')
  const seven = verdict({ value: 6.999999999999999 }, published('iecc-2009-air-changes'))
  expect(seven.meets).toBe(false)
  expect(seven.sentences[0]?.text).toContain('7.00 ACH50 does not meet')
})

/** R 4.2.2: pt(1.5, 4) = 0.896, pt(1.5, 1000) = 0.933034980588957; JCGM 100:2008, annex G (from memory). */
test('with degrees of freedom the chance is of Student’s t, with the coverage factor of the interval', () => {
  const t4 = 2.776445105
  const found = verdict({ value: 2.7, low: 2.7 - 0.2 * t4, high: 2.7 + 0.2 * t4, freedom: 4 }, three)
  expect(found.probability).toBeCloseTo(0.896, 12)
  // Above 60 degrees of freedom the point of t is below 2: the factor stays 2.
  const many = verdict({ value: 2.7, low: 2.3, high: 3.1, freedom: 1000 }, three)
  expect(many.probability).toBeCloseTo(0.933034980588957, 12)
})

test('a factor changes what is compared, not the chance nor the guard band, and both numbers stand in the sentences', () => {
  const measured = { value: 2.9, low: 2.7, high: 3.1 }
  const times = { value: 2.9 * 1.1, low: 2.7 * 1.1, high: 3.1 * 1.1, factor: 1.1 }
  const [plain, multiplied] = [verdict(measured, three), verdict(times, three)]
  expect([plain.meets, multiplied.meets]).toEqual([true, false])
  expect(multiplied.probability).toBeCloseTo(plain.probability ?? Number.NaN, 12)
  expect(multiplied.guarded).toBe(plain.guarded)
  expect(multiplied.value).toBeCloseTo(3.19, 12)
  expect(multiplied.unadjusted).toBeCloseTo(2.9, 12)
  expect(text(multiplied)).toMatchInlineSnapshot(`
    [
      "misses: 3.19 ACH50 does not meet the limit, at most 3.0 ACH50 (Own limit).",
      "factor: 2.90 ACH50 was measured; multiplied by the one-point factor it is 3.19 ACH50. The chance is of what was measured.",
      "probability: Chance that the true value meets it, from the uncertainty of the test: 84 %.",
      "between: The limit lies inside the 95 % interval: a repeated test may come out on the other side.",
      "caution: Check the edition your authority enforces, and its local amendments.",
    ]
  `)
})
