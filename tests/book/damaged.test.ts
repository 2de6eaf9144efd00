/** What is kept may be damaged by a disk, a crash or another program: it is named, kept and not used; the rest works. */
import { describe, expect, it } from 'vitest'
import { csvParts } from '../../lib/book/csv.ts'
import { damagedFills, damagedIn, damagedSettings, type DamagedStore } from '../../lib/book/damaged.ts'
import { database } from '../../lib/book/database.ts'
import { getDevice, listDevices, saveDevice } from '../../lib/book/devices.ts'
import { entriesForwards, getEntry, listEntries, verify } from '../../lib/book/entries.ts'
import { addFillLine, closeUnended, endFill, listOpenFills, startFill } from '../../lib/book/fills.ts'
import { applyImport, planImport } from '../../lib/book/import.ts'
import { getJob, listJobs, saveJob, saveJobSince } from '../../lib/book/jobs.ts'
import { openBookFile, wholeBook } from '../../lib/book/json.ts'
import { listLimits, saveLimit } from '../../lib/book/limits.ts'
import { damagedMaps, listMaps, mapVersions, saveMap } from '../../lib/book/maps.ts'
import { addNote, timeline } from '../../lib/book/notes.ts'
import { getSettings, saveSettings } from '../../lib/book/settings.ts'
import { listRows, rowsDue } from '../../lib/book/search.ts'
import { filledSoFar } from '../../lib/book/series.ts'
import type { FormMap } from '../../lib/form/schema.ts'
import { fakeDevice, fakeFill, fakeJob, fakeLine, fakeMap } from './fake.ts'
import './fresh.ts'

const limit = { id: 'limit-1', name: 'Permit 31', figure: 'air-changes-50', value: '2.5', unit: '1/h', origin: '' }

/** Writes past every check, as a bad disk would. */
async function spoil(store: DamagedStore | 'maps' | 'entries' | 'fills', kept: object): Promise<void> {
  await (await database()).put(store, kept as never)
}

async function fileOf(): Promise<File> {
  const parts: string[] = []
  for await (const part of wholeBook()) parts.push(part)
  return new File(parts, 'book')
}

describe('a form map', () => {
  it('is used in the version before a damaged one, which is named', async () => {
    const kept = await saveMap(fakeMap({ name: 'Permit sheet' }))
    const damaged = { ...kept, version: 2, bindings: [{ id: 'a', control: 'CFM50' }] } as unknown as FormMap
    await spoil('maps', damaged)
    expect(await listMaps()).toEqual([kept])
    expect(await mapVersions(kept.id)).toEqual([kept])
    expect(await damagedMaps()).toEqual([{ id: kept.id, name: 'Permit sheet', version: 2, path: 'bindings.0.control' }])
    // What is damaged is never lost.
    expect(await (await database()).get('maps', [kept.id, 2])).toEqual(damaged)
  })

  it('is named when no version of it can be used', async () => {
    await spoil('maps', { id: 'x', version: 1, name: 'Rebate' })
    expect(await listMaps()).toEqual([])
    expect(await damagedMaps()).toMatchObject([{ id: 'x', name: 'Rebate', version: 1 }])
  })
})

describe('a job, a device, a limit', () => {
  const bad = {
    jobs: { ...fakeJob(), id: 'bad', tests: 'none' },
    devices: { ...fakeDevice(), id: 'bad', ranges: [{ name: 'wide' }] },
    limits: { ...limit, id: 'bad', value: 2.5 },
  }

  it('is left out when it is damaged, and named; the others are there', async () => {
    await Promise.all([saveJob(fakeJob()), saveDevice(fakeDevice()), saveLimit(limit)])
    for (const store of ['jobs', 'devices', 'limits'] as const) await spoil(store, bad[store])
    expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1'])
    expect(await listDevices()).toEqual([fakeDevice()])
    expect(await listLimits()).toEqual([limit])
    expect(await getJob('bad')).toBeUndefined()
    expect(await getDevice('bad')).toBeUndefined()
    expect(await damagedIn('jobs')).toEqual([{ id: 'bad', name: '14 Tannery Row', path: 'tests' }])
    expect(await damagedIn('devices')).toEqual([{ id: 'bad', name: 'Fan in the van', path: 'ranges.0.coefficient' }])
    expect(await damagedIn('limits')).toEqual([{ id: 'bad', name: 'Permit 31', path: 'value' }])
    expect(await (await database()).get('jobs', 'bad')).toEqual(bad.jobs)
  })

  it('is named even when little of it is left', async () => {
    for (const kept of [{ id: 'a' }, { id: 'b', name: 7, building: null }, { id: 'c', building: { street: [] } }])
      await spoil('jobs', kept)
    expect((await damagedIn('jobs')).map(({ name }) => name)).toEqual(['a', 'b', 'c'])
    expect(await listJobs()).toEqual([])
  })

  it('is kept beside what a window that has it open writes', async () => {
    const open = await saveJob(fakeJob())
    await spoil('jobs', { ...open, tests: 'none' })
    expect(await saveJobSince(open, open.updated)).toMatchObject({ kept: { id: open.id } })
    expect(await listJobs()).toHaveLength(1)
    expect((await damagedIn('jobs')).map(({ id }) => id)).toEqual([`${open.id} damaged ${open.updated}`])
  })

  it('comes back from a file, and what was damaged stays beside it', async () => {
    await Promise.all([saveJob(fakeJob()), saveDevice(fakeDevice()), saveLimit(limit)])
    const file = await fileOf()
    await spoil('jobs', { ...fakeJob(), tests: 'none' })
    await spoil('devices', { ...fakeDevice(), ranges: 1 })
    await spoil('limits', { ...limit, value: 1 })
    expect([...(await listJobs()), ...(await listDevices()), ...(await listLimits())]).toEqual([])
    const source = await openBookFile(file)
    await applyImport(await planImport(source), source)
    expect((await listJobs()).map(({ id }) => id)).toEqual(['job-1'])
    expect(await listDevices()).toEqual([fakeDevice()])
    expect(await listLimits()).toEqual([limit])
    for (const store of ['jobs', 'devices', 'limits'] as const) expect(await damagedIn(store)).toHaveLength(1)
  })

  it('goes into a file of the whole book, which can be read', async () => {
    await saveJob(fakeJob())
    await spoil('jobs', bad.jobs)
    const kinds: unknown[] = []
    for await (const { kind, value } of (await openBookFile(await fileOf())).items())
      kinds.push(kind === 'damaged' ? JSON.parse(value.value) : kind)
    expect(kinds).toEqual(['head', 'job', bad.jobs])
  })

  it('is not sealed into an entry', async () => {
    await spoil('jobs', { ...fakeJob(), tests: 'none' })
    await startFill(fakeFill('fill-1'), { engine: '0.1.0' })
    expect(await endFill('fill-1')).not.toHaveProperty('readings')
  })
})

describe('the settings', () => {
  it('stand as usual where they are damaged; the others hold, and nothing is lost when one is set', async () => {
    await saveSettings({ theme: 'dark', backedUp: '2026-02-11' })
    const db = await database()
    const damaged = { ...(await db.get('single', 'settings')), theme: 'plaid', figures: 4 }
    await db.put('single', damaged as never, 'settings')
    expect(await getSettings()).toMatchObject({ theme: 'system', backedUp: '2026-02-11' })
    expect(await damagedSettings()).toEqual(['theme', 'figures'])
    await saveSettings({ onboarded: true })
    expect(await getSettings()).toMatchObject({ theme: 'system', backedUp: '2026-02-11', onboarded: true })
    expect(await damagedSettings()).toEqual([])
    expect(await db.get('single', 'settings damaged')).toEqual(damaged)
  })

  it.each([7, 'text', [1], null, { tester: null, units: 'm' }])('that are %j are no obstacle', async (kept) => {
    await (await database()).put('single', kept as never, 'settings')
    expect(await getSettings()).toMatchObject({ theme: 'system', onboarded: false })
  })
})

async function three(): Promise<void> {
  for (const id of ['fill-1', 'fill-2', 'fill-3']) {
    await startFill(fakeFill(id), { engine: '0.1.0' })
    await endFill(id)
  }
}

describe('an entry', () => {
  it('that is damaged is named by the chain, and not shown; the others are', async () => {
    await three()
    await spoil('entries', { ...(await getEntry(2)), lines: 'gone' })
    await expect(getEntry(2)).rejects.toThrow('Entry 2 is damaged (lines).')
    expect((await listEntries()).map(({ number }) => number)).toEqual([3, 1])
    expect((await timeline('job-1')).map(({ number }) => number)).toEqual([1, 3])
    expect(await verify()).toMatchObject({ ok: false, entry: 2, misfit: 'changed' })
    const rows: string[] = []
    for await (const part of csvParts(entriesForwards())) rows.push(part)
    expect(rows.join('')).toMatch(/\r\n2,,damaged,/)
  })

  it('without a canonical form is named by the chain as any other', async () => {
    await three()
    await spoil('entries', { ...(await getEntry(2)), complete: NaN })
    expect(await verify()).toMatchObject({ ok: false, entry: 2, misfit: 'changed' })
  })

  it('is sealed over all that was kept, also what this version does not know', async () => {
    await three()
    await spoil('entries', { ...(await getEntry(2)), added: 'later' })
    expect(await getEntry(2)).toHaveProperty('added', 'later')
    expect(await verify()).toMatchObject({ ok: false, entry: 2, misfit: 'changed' })
  })

  it('or a fill under way that is damaged keeps no new fill from beginning', async () => {
    await three()
    await spoil('entries', { ...(await getEntry(3)), lines: 'gone' })
    await spoil('fills', { id: 'bad', fill: { id: 'bad' } })
    await startFill(fakeFill('fill-4'), { engine: '0.1.0', tab: 7 })
    expect(await endFill('fill-4')).toMatchObject({ number: 4 })
  })

  it('of a fill under way that is damaged never comes to be; the other fills end', async () => {
    await startFill(fakeFill('fill-1'), { engine: '0.1.0' })
    await spoil('fills', { id: 'bad', fill: { id: 'bad' } })
    expect((await listOpenFills()).map(({ id }) => id)).toEqual(['fill-1'])
    expect(await closeUnended()).toHaveLength(1)
    expect(await (await database()).get('fills', 'bad')).toBeDefined()
  })
})

const damage = async (index: number, line: unknown) =>
  (await database()).put('lines', { fill: 'fill-1', index, line } as never)

describe('what a fill under way noted of a control', () => {
  it('that is damaged is not in the entry, which says so; it is named and kept, and the others are there', async () => {
    await startFill(fakeFill('fill-1'), { engine: '0.1.0' })
    for (const binding of ['volume', 'flow', 'report']) await addFillLine('fill-1', fakeLine(binding))
    await damage(1, { ...fakeLine('flow'), outcome: 'perhaps' })
    expect([...(await filledSoFar('job-1', 'map-1', new Date(fakeFill('fill-1').started)))]).toContain('report')
    const entry = await endFill('fill-1')
    expect(entry.lines.map(({ binding }) => binding)).toEqual(['volume', 'report'])
    expect(entry).toMatchObject({ complete: false, damaged: 1 })
    expect(await damagedFills()).toEqual([
      { of: 'line', id: 'fill-1 1', name: fakeLine('flow').control, path: 'outcome' },
    ])
    expect(await (await database()).get('lines', ['fill-1', 1])).toHaveProperty('line.outcome', 'perhaps')
    expect(await verify()).toMatchObject({ ok: true })
  })

  it.each([undefined, null, 'entered', { binding: 7 }])('keeps no further line from being noted: %j', async (line) => {
    await startFill(fakeFill('fill-1'), { engine: '0.1.0' })
    await addFillLine('fill-1', fakeLine('volume'))
    await damage(0, line)
    expect([...(await filledSoFar('job-1', 'map-1', new Date(fakeFill('fill-1').started)))]).not.toContain('volume')
    for (const binding of ['volume', 'flow', 'report']) await addFillLine('fill-1', fakeLine(binding))
    const entry = await endFill('fill-1')
    expect(entry.lines.map(({ binding }) => binding)).toEqual(['volume', 'flow', 'report'])
    expect(entry).toMatchObject({ complete: true, damaged: 1 })
  })

  it('goes nowhere when the fill itself is damaged, which is named', async () => {
    await startFill(fakeFill('fill-1'), { engine: '0.1.0' })
    const kept = await (await database()).get('fills', 'fill-1')
    await spoil('fills', { ...kept, count: 'many' })
    await expect(addFillLine('fill-1', fakeLine('flow'))).rejects.toThrow('The book knows no such fill.')
    expect(await damagedFills()).toEqual([{ of: 'fill', id: 'fill-1', name: '14 Tannery Row', path: 'count' }])
    expect([...(await filledSoFar('job-1', 'map-1'))]).toEqual([])
  })
})

describe('the short form of an entry', () => {
  const note = {
    kind: 'follow-up',
    of: 2,
    job: { id: 'job-1', name: '14 Tannery Row' },
    status: 'submitted',
    text: '',
    reason: '',
    confirmation: 'R-1182',
    due: '2026-03-01',
    keepUntil: '',
  } as const

  it.each([
    ['no texts', { text: 7 }],
    ['another kind', { kind: 'letter' }],
    ['no counts', { counts: 'all', job: undefined }],
  ])('with %s is made again from the entry and what was said of it', async (_, change) => {
    await three()
    await addNote(note, '0.1.0')
    const whole = await listRows()
    const db = await database()
    await db.put('rows', { ...(await db.get('rows', 2)), ...change } as never)
    expect(await listRows()).toEqual(whole)
    expect(await db.get('rows', 2)).toEqual(whole.find(({ number }) => number === 2))
  })

  it('is made again in every list and order', async () => {
    await three()
    await addNote(note, '0.1.0')
    const db = await database()
    const lists = [
      () => listRows({ order: 'oldest' }),
      () => listRows({ order: 'due first' }),
      () => listRows({ text: 'tannery' }),
      () => listRows({ status: 'submitted' }),
      () => rowsDue('2026-12-31'),
    ]
    for (const list of lists) {
      const whole = await list()
      expect(whole.some(({ number }) => number === 2)).toBe(true)
      await db.put('rows', { ...(await db.get('rows', 2)), hash: 1 } as never)
      expect(await list()).toEqual(whole)
    }
  })

  it('is not written on while it is damaged: what is said meanwhile is in it when it is made again', async () => {
    await three()
    const db = await database()
    await db.put('rows', { ...(await db.get('rows', 2)), text: undefined } as never)
    await addNote(note, '0.1.0')
    expect((await listRows()).find(({ number }) => number === 2)).toMatchObject({
      status: 'submitted',
      confirmation: 'R-1182',
      due: '2026-03-01',
    })
  })

  it('is left out where its entry is damaged too; the others are listed', async () => {
    await three()
    await spoil('entries', { ...(await getEntry(2)), lines: 'gone' })
    const db = await database()
    await db.put('rows', { number: 2 } as never)
    expect((await listRows()).map(({ number }) => number)).toEqual([3, 1])
  })
})
