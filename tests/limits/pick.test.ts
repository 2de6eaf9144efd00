import { expect, test } from 'vitest'
import { limitsFor, ownLimit, publishedLimit, zoneNumber } from '../../lib/limits/index.ts'

test.each([
  ['5', 5],
  [5, 5],
  ['5A', 5],
  ['CZ 4C', 4],
  ['zone 3', 3],
  ['0', 0],
  ['', undefined],
  ['15', undefined],
  ['1.5', undefined],
  ['9', undefined],
  ['Larch County', undefined],
  [undefined, undefined],
])('the zone in %j is %j', (text, zone) => {
  expect(zoneNumber(text)).toBe(zone)
})

test('a zone leaves the limits written for it and those for any zone, newest code first', () => {
  const zoneFive = limitsFor({ subject: 'enclosure', climateZone: '5A' })
  expect(zoneFive.map((limit) => limit.id)).toMatchInlineSnapshot(`
    [
      "iecc-2024-air-changes-zones-4-5",
      "iecc-2021-air-changes-prescriptive-zones-3-8",
      "iecc-2021-air-changes",
      "iecc-2021-per-enclosure-area",
      "iecc-2021-per-enclosure-area-attached-or-small",
      "iecc-2018-air-changes-zones-3-8",
      "iecc-2015-air-changes-zones-3-8",
      "iecc-2012-air-changes-zones-3-8",
      "iecc-2009-air-changes",
      "iecc-commercial-per-enclosure-area",
      "army-corps-per-enclosure-area",
      "passive-house-air-changes",
    ]
  `)
})

test('after one point the limits at 75 Pa come last, and nothing is left out', () => {
  const one = limitsFor({ subject: 'enclosure', procedure: 'one-point' })
  const many = limitsFor({ subject: 'enclosure', procedure: 'astm-e779' })
  expect(one.map((limit) => limit.id).toSorted()).toEqual(many.map((limit) => limit.id).toSorted())
  expect(one.slice(-2).map((limit) => limit.figure)).toEqual([
    'flow-75-per-enclosure-area',
    'flow-75-per-enclosure-area',
  ])
})

const ids = (leakage: 'total' | 'outside', stage: string) =>
  limitsFor({ subject: 'ducts', leakage, stage }).map((limit) => limit.id)

test('the stage and the kind of leakage decide which duct limits apply', () => {
  expect(ids('total', 'rough-in without air handler')).toMatchInlineSnapshot(`
    [
      "iecc-2021-ducts-rough-in-without-air-handler",
      "iecc-2018-ducts-rough-in-without-air-handler",
      "iecc-2015-ducts-rough-in-without-air-handler",
      "iecc-2012-ducts-rough-in-without-air-handler",
      "iecc-2021-ducts-inside",
      "iecc-2009-ducts-rough-in-without-air-handler",
    ]
  `)
  expect(ids('outside', 'final')).toMatchInlineSnapshot(`
    [
      "iecc-2009-ducts-outside",
    ]
  `)
  expect(limitsFor({ subject: 'ducts' }).length).toBeGreaterThan(ids('total', 'final').length)
})

test('an own limit is the user’s alone and must be a number above zero', () => {
  expect(publishedLimit('own')).toBeUndefined()
  expect(publishedLimit('iecc-2009-air-changes')?.comparison).toBe('<')
  expect(ownLimit('duct-flow-25', 60, 'cfm').subject).toBe('ducts')
  expect(ownLimit('air-changes-50', 4, '1/h')).toMatchObject({ id: 'own', value: 4, confidence: 'own' })
  for (const bad of [0, -1, Number.NaN, Infinity]) {
    expect(() => ownLimit('air-changes-50', bad, '1/h')).toThrow('above zero')
  }
})
