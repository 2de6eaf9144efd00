import { expect, it } from 'vitest'
import { database } from '../../lib/book/database.ts'
import { damagedMaps, listMaps, mapVersions, saveMap } from '../../lib/book/maps.ts'
import type { FormMap } from '../../lib/form/schema.ts'
import { fakeMap } from './fake.ts'
import './fresh.ts'

it('uses the version before a damaged one, and names the damaged one', async () => {
  const kept = await saveMap(fakeMap({ name: 'Permit sheet' }))
  const damaged = { ...kept, version: 2, bindings: [{ id: 'a', control: 'CFM50' }] } as unknown as FormMap
  await (await database()).put('maps', damaged)
  expect(await listMaps()).toEqual([kept])
  expect(await mapVersions(kept.id)).toEqual([kept])
  expect(await damagedMaps()).toEqual([{ id: kept.id, name: 'Permit sheet', version: 2, path: 'bindings.0.control' }])
  // What is damaged is never lost.
  expect(await (await database()).get('maps', [kept.id, 2])).toEqual(damaged)
})

it('names a map of which no version can be used', async () => {
  await (await database()).put('maps', { id: 'x', version: 1, name: 'Rebate' } as unknown as FormMap)
  expect(await listMaps()).toEqual([])
  expect(await damagedMaps()).toMatchObject([{ id: 'x', name: 'Rebate', version: 1 }])
})
