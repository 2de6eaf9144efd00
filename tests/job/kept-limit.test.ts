import { expect, test } from 'vitest'
import { ownLimitUnit } from '../../lib/job/own-limit.ts'
import { type KeptLimit, keptLimitSchema } from '../../lib/job/schema.ts'
import { unitChoices } from '../../lib/job/units-by-place.ts'
import { publishedLimits } from '../../lib/limits/published.ts'
import { editions, keptLimitsFor, ownLimitUnits, setFrom, takeLimit, takenLimit } from '../../lib/job/kept-limit.ts'
import { limitOf, verdictOf } from '../../lib/job/verdict.ts'
import { fakeJob, fakeTest } from './fake.ts'

const kept = (patch: Partial<KeptLimit> = {}): KeptLimit => ({
  id: 'larch',
  name: 'Larch County reach',
  figure: 'air-changes-50',
  value: '2.5',
  unit: '1/h',
  origin: 'form LC-7, clause 4',
  ...patch,
})

test('a kept limit is offered where its figure and unit fit the test', () => {
  const limits = [
    kept(),
    kept({ id: 'metric', figure: 'flow-50', unit: 'm3/h' }),
    kept({ id: 'cfm', figure: 'flow-50', unit: 'cfm' }),
    kept({ id: 'ducts', figure: 'duct-flow-25', unit: 'cfm' }),
  ]
  expect(keptLimitsFor(fakeJob(), fakeTest(), limits).map(({ id }) => id)).toEqual(['larch', 'cfm'])
  expect(keptLimitsFor(fakeJob(), fakeTest({ subject: 'ducts' }), limits).map(({ id }) => id)).toEqual(['ducts'])
})

test('a test given a kept limit is compared with it, and says where it stands', () => {
  const given = { ...fakeTest(), ...takeLimit(kept()) }
  const { limit } = limitOf(given)
  expect(limit).toMatchObject({ figure: 'air-changes-50', value: 2.5, unit: '1/h' })
  expect(limit?.edition).toBe('Own limit: Larch County reach, form LC-7, clause 4')
})

test('typed over, or changed in the book, it is the kept one no longer', () => {
  const given = { ...fakeTest(), ...takeLimit(kept()) }
  expect(takenLimit(given, [kept()])?.id).toBe('larch')
  expect(takenLimit({ ...given, ownLimit: '3' }, [kept()])).toBeUndefined()
  expect(takenLimit(given, [kept({ value: '2' })])).toBeUndefined()
  expect(takenLimit({ ...given, limit: '' }, [kept()])).toBeUndefined()
})

const figures = { 'air-changes-50': { value: 2.5, unit: '1/h', low: 2.4, high: 2.6 } }

test('a kept limit may ask for less than its number, and only in some zones', () => {
  const less = kept({ set: 'Larch County 2026', terms: { comparison: '<', climateZones: [5] } })
  const one = { ...fakeTest(), ...takeLimit(less) }
  const inZone = (climateZone: string) => verdictOf(fakeJob({ climateZone }), one, figures)
  expect(inZone('5A').verdict?.meets).toBe(false)
  expect(
    inZone('')
      .verdict?.sentences.map(({ text }) => text)
      .join(' '),
  ).toContain('zone 5')
  expect(inZone('3').withheld?.withheld).toContain(
    '“Own limit: Larch County 2026, Larch County reach, form LC-7, clause 4”',
  )
  expect(inZone('3').verdict).toBeUndefined()
})

test('it is offered where it fits; once taken it stays, and typed over it asks for nothing more', () => {
  const zoned = kept({ terms: { climateZones: [5] } })
  const offered = (one = fakeTest()) => keptLimitsFor(fakeJob({ climateZone: '3' }), one, [zoned]).length
  expect([offered(), offered({ ...fakeTest(), ...takeLimit(zoned) })]).toEqual([0, 1])
  const typed = { ...fakeTest(), ...takeLimit(zoned), ownLimit: '3', ownLimitTerms: {} }
  expect(takenLimit(typed, [zoned])).toBeUndefined()
  expect(verdictOf(fakeJob({ climateZone: '3' }), typed, figures).verdict?.meets).toBe(true)
})

test.each(editions())('a set begun from %s judges as the edition does', (edition) => {
  const set = setFrom(edition, 'Larch County 2026')
  const published = publishedLimits.filter((limit) => limit.edition === edition)
  expect(set.map(({ name }) => name)).toHaveLength(published.length)
  for (const [at, one] of set.entries()) {
    const { figure, subject, value, unit, comparison, climateZones, condition, leakage, stages, ...more } =
      published[at]!
    const { procedures, directions, volume, size } = more
    expect(ownLimitUnits(figure)).toContain(unit)
    const units = unitChoices.find(
      (each) => ownLimitUnit({ ...fakeTest({ subject }), units: each, ownLimitFigure: figure }) === unit,
    )
    const { limit } = limitOf({ ...fakeTest({ subject }), units: units!, ...takeLimit(one) })
    const alike = { figure, subject, value, unit, comparison, climateZones, condition, leakage, stages }
    expect({ ...limit }).toMatchObject(JSON.parse(JSON.stringify({ ...alike, procedures, directions, volume, size })))
    expect(keptLimitSchema.parse(one)).toEqual(one)
  }
})

test('zones with others between them are named one by one', () => {
  const gaps = kept({ terms: { climateZones: [2, 4, 5] } })
  const found = verdictOf(fakeJob({ climateZone: '3' }), { ...fakeTest(), ...takeLimit(gaps) }, figures)
  expect(found.withheld?.withheld).toContain('is for zones 2, 4, 5; this test is of zone 3.')
})
