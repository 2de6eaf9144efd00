import { expect, test } from 'vitest'
import { limitsFor, ownLimit, publishedLimit, publishedLimits, zoneNumber } from '../../lib/limits/index.ts'

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
      "passive-house-air-changes",
      "england-2021-per-enclosure-area",
      "iecc-2024-commercial-per-enclosure-area",
      "iecc-2021-commercial-per-enclosure-area",
      "iecc-commercial-per-enclosure-area",
      "army-corps-per-enclosure-area",
      "germany-air-changes",
      "germany-air-changes-ventilated",
      "germany-per-enclosure-area",
      "germany-per-enclosure-area-ventilated",
      "france-house",
      "france-flats",
    ]
  `)
})

test('one point is not offered the limits that ask for several, and each limit that is left out says why', () => {
  const one = limitsFor({ subject: 'enclosure', procedure: 'one-point' })
  expect(one.filter(({ procedures }) => procedures)).toEqual([])
  expect(one.length + one.others.length).toBe(publishedLimits.length)
  expect(one.others.find(({ limit }) => limit.id === 'iecc-commercial-per-enclosure-area')?.why).toMatchInlineSnapshot(
    `"The limit “IECC commercial, 2012 to 2018: 0.40 cfm75/ft² of enclosure” is for ASTM E779 or ISO 9972 or ASTM E3158; this test is of a one-point test."`,
  )
  expect(limitsFor({ subject: 'ducts' }).others[0]?.why).toMatchInlineSnapshot(
    `"The limit “IECC 2024, house, zones 0 to 2: 4.0 ACH50” is for an enclosure; this test is of ducts."`,
  )
})

test('a limit that holds on a condition comes after those that hold outright', () => {
  const fits = limitsFor({ subject: 'enclosure', procedure: 'one-point' })
  const first = fits.findIndex(({ climateZones }) => climateZones)
  expect(fits[0]?.id).toBe('iecc-2021-air-changes')
  expect(fits.slice(0, first).every(({ climateZones }) => climateZones === undefined)).toBe(true)
  expect(first).toBeGreaterThan(0)
})

test('limits of new work are not offered for ducts that were there before', () => {
  expect(limitsFor({ subject: 'ducts', stage: 'existing' })).toHaveLength(0)
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
