/**
 * Zones as forms are filled with them. By hand, from conservation of mass: (20 / 30)^0.65 = 0.7683;
 * C2 = 400 / (50^0.65 − 20^0.65) = 70.09 and C1 = 53.85 cfm/Pa^n; at 50 Pa 891.3 and 684.8 cfm; C2 × 20^0.65 = 491.3 cfm.
 */
import { expect, test } from 'vitest'
import { suggest } from '../../lib/form/map/suggest.ts'
import type { Clues } from '../../lib/form/schema.ts'
import { emptyZone } from '../../lib/job/empty.ts'
import { material } from '../../lib/job/material.ts'
import type { TypedZone } from '../../lib/job/schema.ts'
import { labelWords, roleWords } from '../../lib/words/names.ts'
import { fakeDevices, fakeJob, fakeTest } from './fake.ts'

const attic: TypedZone = {
  ...emptyZone(),
  name: 'Attic',
  houseZone: '-30',
  zoneOutdoors: '-20',
  closed: '2000',
  opened: '2400',
}
const of = (...zones: TypedZone[]) =>
  material({ ...fakeJob(), tests: [{ ...fakeTest({}), role: 'after', zones }] }, fakeDevices())
const lines = (...zones: TypedZone[]) =>
  Object.entries(of(...zones).items).flatMap(([key, item]) =>
    /\/zone-/.test(key) && item.kind === 'quantity'
      ? `${key} | ${roleWords(item.group)}: ${labelWords(item.label)} | ${item.value.toFixed(item.decimals)} ${item.unit}`
      : [],
  )

test('pressures, ratio and flows of a zone, under its name, with their units', () => {
  expect(lines(attic)).toEqual([
    'after, attic/zone-house | after, attic: house-to-outdoors pressure | 50 Pa',
    'after, attic/zone-house-pressure | after, attic: house-to-zone pressure | -30 Pa',
    'after, attic/zone-outdoors-pressure | after, attic: zone-to-outdoors pressure | -20 Pa',
    'after, attic/zone-ratio | after, attic: leak ratio, house to zone over zone to outdoors | 0.77 1',
    'after, attic/zone-house-leakage | after, attic: house-to-zone leakage | 685 cfm',
    'after, attic/zone-outdoors-leakage | after, attic: zone-to-outdoors leakage | 891 cfm',
    'after, attic/zone-through-leakage | after, attic: leakage through the zone | 491 cfm',
  ])
})

test('a zone is known by its name, not by its place; what is not measured is not offered', () => {
  const garage = { ...emptyZone(), name: 'garage', houseZone: '48', zoneOutdoors: '3' }
  const keys = (...zones: TypedZone[]) => lines(...zones).map((line) => line.split('/')[0])
  expect(new Set(keys(attic, garage))).toEqual(new Set(['after, attic', 'after, garage']))
  expect(new Set(keys(garage, attic))).toEqual(new Set(['after, attic', 'after, garage']))
  expect(lines(garage).map((line) => line.split(' | ')[0])).toEqual([
    'after, garage/zone-house',
    'after, garage/zone-house-pressure',
    'after, garage/zone-outdoors-pressure',
    'after, garage/zone-ratio',
  ])
  expect(new Set(keys(attic, attic, { ...attic, name: '' }))).toEqual(
    new Set(['after, attic', 'after, attic 2', 'after, zone 3']),
  )
  expect(lines(emptyZone())).toEqual([])
})

const clues = (name: string, section = 'After work'): Clues => ({
  kind: 'number',
  name,
  section,
  attributes: {},
  placeholder: '',
  options: [],
  position: 0,
})

test.each([
  ['House to attic pressure (Pa)', 'after, attic/zone-house-pressure'],
  ['Attic to outside pressure (Pa)', 'after, attic/zone-outdoors-pressure'],
  ['Attic leak ratio', 'after, attic/zone-ratio'],
  ['House to attic leakage, cfm', 'after, attic/zone-house-leakage'],
])('the label “%s” gets %s proposed', (label, item) => {
  expect(suggest(clues(label), of(attic))[0]).toMatchObject({ item })
})

test.each(['House pressure (Pa)', 'Leakage to outdoors, cfm', 'Ratio'])(
  'the label “%s”, which names no zone, gets nothing of a zone proposed',
  (label) => {
    const found = suggest(clues(label), of(attic)).filter(({ item, score }) => /\/zone-/.test(item) && score >= 0.5)
    expect(found).toEqual([])
  },
)
