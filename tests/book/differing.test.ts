/** What a file has with other content: compared, taken or left, and put back; sealed entries stay as they are. */
import { ownStorage } from './own-storage.ts'
import { beforeEach, describe, expect, test } from 'vitest'
import { deleteDB } from 'idb'
import { closeDatabase } from '../../lib/book/database.ts'
import { deleteDevice, getDevice, listDevices, saveDevice } from '../../lib/book/devices.ts'
import { putBack, type Differing } from '../../lib/book/differing.ts'
import { entriesForwards, verify } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport, type ImportPlan } from '../../lib/book/import.ts'
import { compareAtStart } from '../../lib/book/journal/compare.ts'
import { closeJournal } from '../../lib/book/journal/place.ts'
import { fileParts, openBookFile } from '../../lib/book/json.ts'
import { listLimits, saveLimit } from '../../lib/book/limits.ts'
import { listMaps, mapVersions, saveMap } from '../../lib/book/maps.ts'
import { context, fakeDevice, fakeFill, fakeLimit, fakeLine, fakeMap } from './fake.ts'
import './fresh.ts'

const limit = fakeLimit()
const [otherDevice, otherLimit] = [fakeDevice({ calibrated: '2026-09-01' }), { ...limit, value: '5' }]

let file = ''
/** Takes the file in; `choose` says of what differs what is taken, all that is usual where it is left out. */
async function takeIn(choose?: (plan: ImportPlan) => readonly Differing[]) {
  const source = await openBookFile(new Blob([file]))
  const plan = await planImport(source)
  const taken = choose?.(plan)
  await applyImport(plan, source, 'theirs.json', undefined, undefined, taken)
  return { plan, taken: taken ?? [] }
}
const all = ({ devices, limits, maps }: ImportPlan): Differing[] => [...devices.kept, ...limits.kept, ...maps.next]
const here = async () => ({
  devices: await listDevices(),
  limits: await listLimits(),
  maps: (await mapVersions('map-1')).map(({ name, version }) => [version, name]),
})

beforeEach(async () => {
  await closeJournal()
  ownStorage.clear()
  await saveDevice(fakeDevice())
  await saveLimit(limit)
  await saveMap(fakeMap())
  const parts = fileParts({
    devices: [otherDevice],
    limits: [otherLimit],
    maps: [fakeMap({ version: 1, name: 'By the office' })],
    book: 'theirs',
  })
  file = (await Array.fromAsync(parts)).join('')
})

describe('what differs', () => {
  test('is told with both contents; devices and limits stay yours unless the file’s are taken', async () => {
    const before = await here()
    const { plan } = await takeIn(() => [])
    expect(plan.devices.kept).toEqual([{ kind: 'device', yours: fakeDevice(), theirs: otherDevice }])
    expect(plan.limits.kept).toEqual([{ kind: 'limit', yours: limit, theirs: otherLimit }])
    expect(plan.maps.next).toMatchObject([{ kind: 'map', theirs: { name: 'By the office' } }])
    expect(await here()).toEqual(before)
    await takeIn()
    expect(await here()).toMatchObject({ devices: [fakeDevice()], limits: [limit] })
  })

  test('takes the place of yours when it is chosen, and what was sealed stays', async () => {
    await startFill(fakeFill('a'), context)
    await addFillLine('a', fakeLine('flow'))
    await endFill('a')
    const sealed = await Array.fromAsync(entriesForwards())
    await takeIn(all)
    expect(await here()).toEqual({
      devices: [otherDevice],
      limits: [otherLimit],
      maps: [
        [2, 'By the office'],
        [1, fakeMap().name],
      ],
    })
    expect(await Array.fromAsync(entriesForwards())).toEqual(sealed)
    expect(await verify()).toMatchObject({ ok: true, count: 1 })
    // Nothing differs any more.
    expect(all((await takeIn(() => [])).plan)).toEqual([])
  })

  test('can be chosen one by one', async () => {
    await takeIn(({ limits }) => limits.kept)
    expect(await here()).toMatchObject({ devices: [fakeDevice()], limits: [otherLimit], maps: [[1, fakeMap().name]] })
  })

  test('is put back; of a form map yours becomes the next version', async () => {
    const { taken } = await takeIn(all)
    await putBack(taken)
    expect(await here()).toMatchObject({ devices: [fakeDevice()], limits: [limit] })
    expect((await listMaps())[0]).toMatchObject({ version: 3, name: fakeMap().name })
  })

  test('is not put back over what was typed since', async () => {
    const { taken } = await takeIn(all)
    await saveDevice({ ...otherDevice, serial: '9' })
    await expect(putBack(taken)).rejects.toThrow(/Fan in the van was changed since the file was taken in/)
    expect(await getDevice('device-1')).toMatchObject({ serial: '9' })
    expect(await listLimits()).toEqual([otherLimit])
  })

  test('is not taken over what was typed since it was compared; nothing is taken in then', async () => {
    const source = await openBookFile(new Blob([file]))
    const plan = await planImport(source)
    await saveDevice(fakeDevice({ serial: '9' }))
    await expect(applyImport(plan, source, 'x', undefined, undefined, all(plan))).rejects.toThrow(
      /Fan in the van was changed here since the file was looked at\. Nothing was taken in/,
    )
    expect(await here()).toMatchObject({ devices: [{ serial: '9' }], limits: [limit], maps: [[1, fakeMap().name]] })
  })

  test('and was deleted here says so, is in the list again when it is taken, and deleted when it is put back', async () => {
    await deleteDevice('device-1')
    const { plan, taken } = await takeIn(({ devices }) => devices.kept)
    expect(plan.devices.kept).toMatchObject([{ gone: true }])
    expect(await listDevices()).toEqual([otherDevice])
    await putBack(taken)
    expect(await listDevices()).toEqual([])
    expect(await getDevice('device-1')).toEqual(fakeDevice())
  })

  test('and was taken is what a lost database gets back', async () => {
    await takeIn(all)
    await closeJournal()
    await closeDatabase()
    await deleteDB('gapsum')
    await compareAtStart()
    expect(await here()).toMatchObject({
      devices: [otherDevice],
      limits: [otherLimit],
      maps: [
        [2, 'By the office'],
        [1, fakeMap().name],
      ],
    })
  })
})
