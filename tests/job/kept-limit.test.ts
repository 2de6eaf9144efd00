import { expect, test } from 'vitest'
import type { KeptLimit } from '../../lib/job/schema.ts'
import { keptLimitsFor, takeLimit, takenLimit } from '../../lib/job/kept-limit.ts'
import { limitOf } from '../../lib/job/verdict.ts'
import { fakeTest } from './fake.ts'

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
  expect(keptLimitsFor(fakeTest(), limits).map(({ id }) => id)).toEqual(['larch', 'cfm'])
  expect(keptLimitsFor(fakeTest({ subject: 'ducts' }), limits).map(({ id }) => id)).toEqual(['ducts'])
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
