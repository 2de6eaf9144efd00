import { describe, expect, test } from 'vitest'
import { deleteDevice, getDevice, listDevices, restoreDevice, saveDevice } from '../../lib/book/devices.ts'
import { deleteJob, getJob, listDeletedJobs, listJobs, restoreJob, saveJob } from '../../lib/book/jobs.ts'
import { deleteMap, listMaps, mapVersions, restoreMap, saveMap } from '../../lib/book/maps.ts'
import { subscribe, type Notice } from '../../lib/book/notice.ts'
import { getSettings, saveSettings } from '../../lib/book/settings.ts'
import { serves } from '../../lib/form/map/address.ts'
import { fakeBinding, fakeDevice, fakeJob, fakeMap } from './fake.ts'
import { reopen } from './fresh.ts'

const found = async (url: string) => (await listMaps()).filter((map) => serves(map, url)).map(({ id }) => id)

describe('jobs', () => {
  test('are kept as typed and listed with the last one typed in first', async () => {
    await saveJob(fakeJob())
    await saveJob(fakeJob({ id: 'job-2' }))
    await new Promise((resolve) => setTimeout(resolve, 5))
    const building = { ...fakeJob().building, volume: '158' }
    await saveJob(fakeJob({ building }))
    expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1', 'job-2'])
    await reopen()
    expect((await getJob('job-1'))?.building).toEqual(building)
  })

  test('of many keystrokes at once end as the last one', async () => {
    const texts = Array.from({ length: 60 }, (_, index) => '1'.repeat(index + 1))
    await Promise.all(texts.map((volume) => saveJob(fakeJob({ building: { ...fakeJob().building, volume } }))))
    expect((await getJob('job-1'))?.building.volume).toBe('1'.repeat(60))
  })

  test('that do not fit are refused by the name of the field', async () => {
    const job = fakeJob()
    const odd = { ...job, units: { ...job.units, flow: 'gallons' } } as unknown as typeof job
    await expect(saveJob(odd)).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: The job was not kept: units.flow is not what the book expects (Invalid input).]`,
    )
    expect(await listJobs()).toEqual([])
  })

  test('are hidden when deleted and come back', async () => {
    await saveJob(fakeJob())
    await deleteJob('job-1')
    expect(await listJobs()).toEqual([])
    expect((await listDeletedJobs()).map(({ job }) => job.id)).toEqual(['job-1'])
    expect(await getJob('job-1')).toBeDefined()
    await restoreJob('job-1')
    expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1'])
    expect(await listDeletedJobs()).toEqual([])
  })
})

describe('settings', () => {
  test('have values before anything was set, and a patch leaves the others', async () => {
    expect(await getSettings()).toMatchObject({ onboarded: false, theme: 'system', current: { job: '', test: '' } })
    await Promise.all([
      saveSettings({ theme: 'dark' }),
      saveSettings({ onboarded: true }),
      saveSettings({ current: { job: 'job-1', test: 'test-1' } }),
    ])
    expect(await getSettings()).toMatchObject({ theme: 'dark', onboarded: true, current: { job: 'job-1' } })
  })

  test('that do not fit are refused', async () => {
    await expect(saveSettings({ theme: 'pink' as 'dark' })).rejects.toThrow('theme')
    expect((await getSettings()).theme).toBe('system')
  })
})

test('devices are listed by name; a deleted one is still found by its id', async () => {
  await saveDevice(fakeDevice({ id: 'b', name: 'Second fan' }))
  await saveDevice(fakeDevice({ id: 'a', name: 'First fan' }))
  expect((await listDevices()).map(({ id }) => id)).toEqual(['a', 'b'])
  await deleteDevice('a')
  expect((await listDevices()).map(({ id }) => id)).toEqual(['b'])
  expect(await getDevice('a')).toMatchObject({ name: 'First fan' })
  await restoreDevice('a')
  expect((await listDevices()).map(({ id }) => id)).toEqual(['a', 'b'])
})

describe('form maps', () => {
  test('keep every version; the book numbers them', async () => {
    const first = await saveMap(fakeMap({ version: 99 }))
    const second = await saveMap({ ...first, bindings: [...first.bindings, fakeBinding('date', 'Date of test')] })
    expect([first.version, second.version]).toEqual([1, 2])
    expect(second.created).toBe(first.created)
    expect(await mapVersions('map-1')).toEqual([second, first])
    expect(await listMaps()).toEqual([second])
  })

  test('that did not change get no new version', async () => {
    const first = await saveMap(fakeMap())
    expect(await saveMap(first)).toEqual(first)
    expect(await mapVersions('map-1')).toHaveLength(1)
  })

  test('saved at the same time all stay', async () => {
    await Promise.all(['a', 'b', 'c'].map((name) => saveMap(fakeMap({ name }))))
    expect((await mapVersions('map-1')).map(({ version, name }) => [version, name])).toEqual([
      [3, 'c'],
      [2, 'b'],
      [1, 'a'],
    ])
  })

  test('are hidden when deleted, with their versions kept', async () => {
    await saveMap(fakeMap())
    await deleteMap('map-1')
    expect(await listMaps()).toEqual([])
    expect(await mapVersions('map-1')).toHaveLength(1)
    await restoreMap('map-1')
    expect(await listMaps()).toHaveLength(1)
    await deleteMap('map-1')
    expect((await saveMap(fakeMap())).version).toBe(2)
    expect(await listMaps()).toHaveLength(1)
  })

  test('are found for the page they were made for', async () => {
    await saveMap(fakeMap())
    await saveMap(fakeMap({ id: 'map-2', address: { origin: 'https://permits.marrowby.example', path: '/sheet-4' } }))
    expect(await found('https://comfort.larchcounty.example/apply/187/part-c?token=1#top')).toEqual(['map-1'])
    expect(await found('https://permits.marrowby.example/sheet-4')).toEqual(['map-2'])
    expect(await found('https://comfort.larchcounty.example/apply/187/part-d')).toEqual([])
    expect(await found('http://comfort.larchcounty.example/apply/187/part-c')).toEqual([])
  })
})

test('open views are told of changes, their own marked so', async () => {
  const seen: [Notice, boolean][] = []
  const stop = subscribe((notice, own) => seen.push([notice, own]))
  const other = new BroadcastChannel('gapsum-book')
  const heard = new Promise<unknown>((resolve) => {
    other.addEventListener('message', (event: MessageEvent) => resolve(event.data))
  })
  await saveJob(fakeJob())
  expect(await heard).toEqual({ what: 'jobs', id: 'job-1' })
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a BroadcastChannel has no target origin
  other.postMessage({ what: 'settings' })
  await expect.poll(() => seen).toHaveLength(2)
  stop()
  other.close()
  await saveJob(fakeJob())
  expect(seen).toEqual([
    [{ what: 'jobs', id: 'job-1' }, true],
    [{ what: 'settings' }, false],
  ])
})
