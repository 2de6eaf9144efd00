/** A database as each released version left it is taken over whole. The fixtures were written by that version itself. */
import { openDB } from 'idb'
import { expect, test } from 'vitest'
import { database } from '../../lib/book/database.ts'
import { listDevices } from '../../lib/book/devices.ts'
import { getEntry, verify } from '../../lib/book/entries.ts'
import { closeUnended, listOpenFills } from '../../lib/book/fills.ts'
import { indexOlder } from '../../lib/book/indexing.ts'
import { getJob, listDeletedJobs, listJobs } from '../../lib/book/jobs.ts'
import { mapVersions } from '../../lib/book/maps.ts'
import { addNote } from '../../lib/book/notes.ts'
import { listRows } from '../../lib/book/search.ts'
import { getSettings } from '../../lib/book/settings.ts'
import { reopen } from './fresh.ts'
import { keptBy, type Kept } from './versions/kept.ts'

/** The tables of version 1, as they were declared then. */
async function writeVersion1(kept: Kept): Promise<void> {
  const db = await openDB('gapsum', 1, {
    upgrade(made) {
      made.createObjectStore('jobs', { keyPath: 'id' }).createIndex('updated', 'updated')
      made.createObjectStore('devices', { keyPath: 'id' })
      made.createObjectStore('maps', { keyPath: ['id', 'version'] })
      made.createObjectStore('tombstones', { keyPath: ['kind', 'id'] })
      made.createObjectStore('fills', { keyPath: 'id' })
      made.createObjectStore('lines', { keyPath: ['fill', 'index'] })
      const entries = made.createObjectStore('entries', { keyPath: 'number' })
      entries.createIndex('fill', 'id', { unique: true })
      entries.createIndex('job and map', ['job.id', 'map.id'])
      made.createObjectStore('rows', { keyPath: 'number' })
      made.createObjectStore('single')
    },
  })
  for (const [store, values] of Object.entries(kept)) {
    for (const value of values) {
      if (store === 'single') {
        const [key, single] = value as [string, unknown]
        await db.put(store, single, key)
      } else await db.put(store, value)
    }
  }
  db.close()
}

async function records(): Promise<Kept> {
  const db = await database()
  const all: Kept = {}
  for (const name of ['jobs', 'devices', 'maps', 'tombstones', 'fills', 'lines', 'entries'] as const)
    all[name] = await db.getAll(name)
  return all
}

test('version 1 keeps every record', async () => {
  const before = keptBy('version-1')
  await writeVersion1(before)
  const { rows: _, single: __, ...rest } = before
  expect(await records()).toEqual(rest)
  expect(await listJobs()).toHaveLength(2)
  expect(await listDeletedJobs()).toHaveLength(1)
  expect(await listDevices()).toHaveLength(1)
  expect(await mapVersions('map-1')).toHaveLength(2)
  expect(await getSettings()).toMatchObject({ theme: 'dark', onboarded: true, backedUp: '' })
  expect((await getJob('job-1'))?.building.volume).toBe('15810')
  expect(await verify()).toMatchObject({ ok: true, count: 2 })
})

test('version 1 gets words and a status for its entries', async () => {
  await writeVersion1(keptBy('version-1'))
  expect((await listRows()).map(({ number }) => number)).toEqual([2, 1])
  expect((await listRows({ text: 'tannery' })).map(({ number }) => number)).toEqual([2, 1])
  expect((await listRows({ text: 'eole 8011' })).map(({ number }) => number)).toEqual([2])
  expect((await listRows({ status: 'entered' })).map(({ number }) => number)).toEqual([1])
})

test('version 1 goes on: its open fill ends, notes follow, and the chain fits', async () => {
  await writeVersion1(keptBy('version-1'))
  expect(await listOpenFills()).toHaveLength(1)
  await closeUnended()
  const old = await getEntry(1)
  await addNote(
    { kind: 'correction', job: old!.job, of: 1, reason: 'The volume is that of the plans.', text: '15790' },
    '0.2.0',
  )
  expect(await verify()).toMatchObject({ ok: true, count: 4 })
  expect(await getEntry(1)).toEqual(old)
})

test('taking words in goes on where it was cut off', async () => {
  await writeVersion1(keptBy('version-1'))
  const cut = indexOlder().catch(() => undefined)
  await reopen()
  await cut
  await indexOlder()
  expect((await listRows({ text: 'tannery' })).map(({ number }) => number)).toEqual([2, 1])
  expect(await (await database()).get('single', 'older')).toEqual({ to: 0 })
})
