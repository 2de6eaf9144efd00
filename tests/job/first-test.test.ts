import { expect, test } from 'vitest'
import { emptyJob, emptyTest } from '../../lib/job/empty.ts'
import { firstTest } from '../../lib/job/first-test.ts'
import type { KeptLimit } from '../../lib/job/schema.ts'
import { unitSets } from '../../lib/job/units.ts'
import { fakeDevices } from './fake.ts'

const kept: KeptLimit = {
  id: 'k',
  name: 'Larch County',
  figure: 'air-changes-50',
  value: '2.5',
  unit: '1/h',
  origin: '',
}
const book = { limits: [kept], devices: fakeDevices() }
const job = emptyJob(unitSets.IP)
const blank = emptyTest('before', 'enclosure', unitSets.IP)

test('a new job begins with what is set for it', () => {
  const set = {
    procedure: 'astm-e779',
    stage: 'final',
    limit: 'iecc-2021-air-changes',
    device: 'demo-device',
    pressurePercent: '0.9',
    flowPercent: '3',
  } as const
  const { limit, stage, sheet } = firstTest(job, blank, set, book)
  expect({ limit, stage, ...sheet }).toMatchObject({ ...set, subject: 'enclosure', points: blank.sheet.points })
  expect(firstTest(job, blank, {}, book)).toEqual(blank)
})

test('a kept limit is copied in, and one that is gone or for other units or ducts is left out', () => {
  const given = firstTest(job, blank, { limit: 'kept:k' }, book)
  expect(given).toMatchObject({ limit: 'own', ownLimit: '2.5', ownLimitOrigin: 'Larch County' })
  for (const limit of ['kept:gone', 'gone', 'iecc-2021-ducts-total'])
    expect(firstTest(job, blank, { limit, device: 'gone' }, book)).toEqual(blank)
  const metric = { ...kept, figure: 'flow-50-per-enclosure-area', unit: 'm3/(h.m2)' }
  expect(firstTest(job, blank, { limit: 'kept:k' }, { ...book, limits: [metric] })).toEqual(blank)
})
