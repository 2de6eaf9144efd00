import { describe, expect, test } from 'vitest'
import { type Limit, limitsFor, publishedLimit, publishedLimits, type Scope, verdict } from '../../lib/limits/index.ts'

const procedures = ['one-point', 'two-point', 'astm-e779', 'iso-9972'] as const
const stages = ['rough-in', 'rough-in without air handler', 'final', 'existing'] as const
const zones = [0, 1, 2, 3, 4, 5, 6, 7, 8]

/** A test that the limit is written for, with nothing left unsaid. */
const fitting = (limit: Limit): Scope => ({
  subject: limit.subject,
  climateZone: limit.climateZones?.[0] ?? 5,
  leakage: limit.leakage ?? 'total',
  stage: limit.stages?.[0] ?? 'final',
  procedure: limit.procedures?.[0] ?? 'one-point',
  directions: limit.directions === 'mean' ? 'mean' : 'depressurize',
  volume: limit.volume ?? 'net',
  size: limit.size?.above === undefined ? 600 : limit.size.above + 1,
})

/** Every way in which a test can be another than the limit is written for, one at a time. */
function mismatches(limit: Limit): [string, Scope][] {
  const other = <K extends keyof Scope>(key: K, values: readonly Scope[K][]): [string, Scope][] =>
    values.map((value) => [`${key} ${String(value)}`, { ...fitting(limit), [key]: value }])
  return [
    ...other('subject', [limit.subject === 'ducts' ? 'enclosure' : 'ducts']),
    ...other('leakage', limit.leakage ? [limit.leakage === 'total' ? 'outside' : 'total'] : []),
    ...other('stage', limit.stages ? stages.filter((stage) => !limit.stages?.includes(stage)) : []),
    ...other('climateZone', limit.climateZones ? zones.filter((zone) => !limit.climateZones?.includes(zone)) : []),
    ...other('procedure', limit.procedures ? procedures.filter((one) => !limit.procedures?.includes(one)) : []),
    ...other('directions', limit.directions === 'mean' ? ['depressurize', 'pressurize'] : []),
    ...other('directions', limit.directions === 'each' ? ['mean'] : []),
    ...other('volume', limit.volume ? [limit.volume === 'net' ? 'gross' : 'net'] : []),
    ...other('size', limit.size?.above === undefined ? [] : [limit.size.above, 300]),
    ...other('size', limit.size?.most === undefined ? [] : [limit.size.most + 1]),
  ]
}

const cases = publishedLimits.flatMap((limit) =>
  mismatches(limit).map(([what, scope]) => [limit.id, what, limit, scope] as const),
)

test('the table has every published limit, and every kind of mismatch', () => {
  expect(new Set(cases.map(([id]) => id)).size).toBe(publishedLimits.length)
  const kinds = new Set(cases.map(([, what]) => what.split(' ')[0]))
  expect([...kinds].toSorted()).toEqual(
    ['climateZone', 'directions', 'leakage', 'procedure', 'size', 'stage', 'subject', 'volume'].toSorted(),
  )
  expect(cases.length).toBeGreaterThan(220)
})

test.each(cases)('%s gives no verdict for %s', (_, __, limit, scope) => {
  const found = verdict({ value: limit.value / 2, low: limit.value / 3, high: limit.value * 0.6 }, limit, scope)
  expect(found).not.toHaveProperty('meets')
  if (!('withheld' in found)) throw new Error('there is a verdict')
  expect(found.withheld).toMatch(
    /^No verdict\. The limit “.+” is for .+; this test is of .+\. (This one fits: |No published)/,
  )
  expect(limitsFor(scope).map(({ id }) => id)).not.toContain(limit.id)
  expect(limitsFor(scope).others.find((other) => other.limit === limit)?.why).not.toBe('')
  const other = found.instead
  expect(other === undefined || 'meets' in verdict({ value: 1 }, other, scope)).toBe(true)
})

test.each(publishedLimits)('$id gives a verdict for a test that it is written for', (limit) => {
  const found = verdict({ value: limit.value / 2 }, limit, fitting(limit))
  if ('withheld' in found) throw new Error(found.withheld)
  expect(found.meets).toBe(true)
  // One direction is never both: that each has to hold is said of any single test.
  expect(found.unsaid).toEqual(limit.directions === 'each' ? ['both directions, each by itself'] : [])
  expect(limitsFor(fitting(limit)).map(({ id }) => id)).toContain(limit.id)
})

const unsaid = (id: string, scope: Scope) => {
  const found = verdict({ value: 1 }, publishedLimit(id)!, scope)
  return 'withheld' in found ? found.withheld : found.sentences.filter(({ code }) => code === 'condition')
}

describe('what the test does not say is a condition of the verdict', () => {
  test('the zone, the stage, the volume, the size', () => {
    expect(unsaid('iecc-2021-air-changes-prescriptive-zones-3-8', { subject: 'enclosure' })).toMatchInlineSnapshot(`
      [
        {
          "code": "condition",
          "text": "The verdict holds only for zones 3 to 8: the test does not say so.",
        },
      ]
    `)
    expect(unsaid('iecc-2021-ducts-rough-in', { subject: 'ducts', leakage: 'total' })).toMatchInlineSnapshot(`
      [
        {
          "code": "condition",
          "text": "The verdict holds only for rough-in: the test does not say so.",
        },
      ]
    `)
    expect(unsaid('germany-air-changes', { procedure: 'iso-9972', directions: 'pressurize' })).toMatchInlineSnapshot(`
      [
        {
          "code": "condition",
          "text": "The verdict holds only for both directions, each by itself; the net air volume; buildings of up to 1500 m³ of air: the test does not say so.",
        },
      ]
    `)
    expect(unsaid('iecc-2021-air-changes', {})).toEqual([])
  })
})

test('the limit that fits is of the same edition where there is one', () => {
  const leaky = verdict({ value: 3.6 }, publishedLimit('iecc-2021-air-changes-prescriptive-zones-0-2')!, {
    subject: 'enclosure',
    climateZone: '5A',
    procedure: 'one-point',
  })
  expect(leaky).toMatchObject({ instead: { id: 'iecc-2021-air-changes-prescriptive-zones-3-8' } })
  const outside = verdict({ value: 3 }, publishedLimit('iecc-2021-ducts-total')!, {
    subject: 'ducts',
    leakage: 'outside',
    stage: 'final',
  })
  expect(outside).toMatchObject({ instead: { id: 'iecc-2009-ducts-outside' } })
  expect('withheld' in outside && outside.withheld).toMatchInlineSnapshot(
    `"No verdict. The limit “IECC 2021, ducts, finished, total: 4.0 cfm25 per 100 ft²” is for total leakage; this test is of leakage to outside. This one fits: IECC 2009, ducts, finished, to outside: 8.0 cfm25 per 100 ft²."`,
  )
})
