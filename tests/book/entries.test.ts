import { describe, expect, test } from 'vitest'
import * as entriesModule from '../../lib/book/entries.ts'
import { getEntry as getAny, listEntries as listAny } from '../../lib/book/entries.ts'
import { addFillLine, closeUnended, endFill, listOpenFills, startFill } from '../../lib/book/fills.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import type { FillEntry } from '../../lib/book/schema.ts'
import { listRows, type Listing } from '../../lib/book/search.ts'
import { passes } from '../../lib/book/rows.ts'
import { context, fakeFill, fakeJob, fakeLine } from './fake.ts'
import { reopen } from './fresh.ts'
import { manyEntries } from './many.ts'

/** The entries of these tests are all of fills. */
const getEntry = async (number: number) => (await getAny(number)) as FillEntry | undefined
const listEntries = async (listing?: Listing) => (await listAny(listing)) as FillEntry[]

async function fillWhole(id: string, overrides: Parameters<typeof fakeFill>[1] = {}) {
  const fill = fakeFill(id, overrides)
  await startFill(fill, context)
  for (const { binding, control, text } of fill.planned) {
    await addFillLine(id, fakeLine(binding, { control, intended: text, readBack: text }))
  }
  return endFill(id)
}

describe('a fill', () => {
  test('becomes an entry with its lines and the readings behind it', async () => {
    const job = await saveJob(fakeJob())
    const entry = await fillWhole('fill-1')
    await saveJob({ ...job, building: { ...job.building, volume: '20000' } })
    expect(entry).toMatchObject({ number: 1, id: 'fill-1', complete: true, previous: '', engine: '0.1.0' })
    expect(entry.lines.map(({ binding }) => binding)).toEqual(['volume', 'flow', 'report'])
    expect(await getEntry(1)).toEqual(entry)
    expect((await getEntry(1))?.readings?.building.volume).toBe('15810')
    expect(await listOpenFills()).toEqual([])
  })

  test('that a crash ended leaves an entry with the lines written so far', async () => {
    await startFill(fakeFill('fill-1'), context)
    await addFillLine('fill-1', fakeLine('volume'))
    await addFillLine('fill-1', fakeLine('flow', { outcome: 'differs', readBack: '745' }))
    await reopen()
    const [entry, ...more] = await closeUnended()
    expect(more).toEqual([])
    expect(entry).toMatchObject({ number: 1, complete: false })
    expect(entry?.lines.map(({ binding, readBack }) => [binding, readBack])).toEqual([
      ['volume', '754'],
      ['flow', '745'],
    ])
    await expect(addFillLine('fill-1', fakeLine('report'))).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: This fill has ended: it is entry 1 of the book. Start a new fill.]`,
    )
    expect(await closeUnended()).toEqual([])
  })

  test('goes on over a restart of the worker', async () => {
    await startFill(fakeFill('fill-1'), context)
    await addFillLine('fill-1', fakeLine('volume'))
    await reopen()
    await addFillLine('fill-1', fakeLine('flow'))
    await reopen()
    await addFillLine('fill-1', fakeLine('report'))
    expect(await endFill('fill-1')).toMatchObject({ complete: true })
  })

  test('that still runs is left alone', async () => {
    await startFill(fakeFill('fill-1'), context)
    await startFill(fakeFill('fill-2'), { engine: '0.1.0', tab: 8 })
    const closed = await closeUnended(({ tab }) => tab === 7)
    expect(closed.map(({ id }) => id)).toEqual(['fill-2'])
    expect((await listOpenFills()).map(({ id }) => id)).toEqual(['fill-1'])
  })

  test('that ends before all planned bindings is not complete', async () => {
    await startFill(fakeFill('fill-1'), context)
    await addFillLine('fill-1', fakeLine('volume'))
    expect(await endFill('fill-1')).toMatchObject({ complete: false })
  })

  test('keeps one line for a binding whose message came twice', async () => {
    await startFill(fakeFill('fill-1'), context)
    await addFillLine('fill-1', fakeLine('volume'))
    await addFillLine('fill-1', fakeLine('flow', { readBack: '75' }))
    await addFillLine('fill-1', fakeLine('flow'))
    const { lines } = await endFill('fill-1')
    expect(lines.map(({ binding, readBack }) => [binding, readBack])).toEqual([
      ['volume', '754'],
      ['flow', '754'],
    ])
  })

  test('is refused in words when it is not known or does not fit', async () => {
    await expect(endFill('nobody')).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: The book knows no such fill. Close the plan, open it again and start anew.]`,
    )
    const odd = { ...fakeFill('fill-1'), planned: 'all' } as unknown as ReturnType<typeof fakeFill>
    await expect(startFill(odd, context)).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: The fill was not kept: planned is not what the book expects (Invalid input).]`,
    )
  })
})

describe('numbers', () => {
  test('go on without gaps when fills end at the same time', async () => {
    const ids = Array.from({ length: 12 }, (_, index) => `fill-${index}`)
    await Promise.all(ids.map((id) => startFill(fakeFill(id), context)))
    const entries = await Promise.all([...ids, ...ids].map((id) => endFill(id)))
    const numbers = new Set(entries.map(({ number }) => number))
    expect([...numbers].toSorted((a, b) => a - b)).toEqual(ids.map((_, index) => index + 1))
    expect(await entriesModule.countEntries()).toBe(12)
    expect(await entriesModule.verify()).toMatchObject({ ok: true, count: 12 })
  })

  test('a line that arrives while the fill ends is not lost', async () => {
    await startFill(fakeFill('fill-1'), context)
    await addFillLine('fill-1', fakeLine('volume'))
    const [entry, late] = await Promise.allSettled([endFill('fill-1'), addFillLine('fill-1', fakeLine('flow'))])
    const kept = (await getEntry(1))?.lines.map(({ binding }) => binding)
    expect(entry.status).toBe('fulfilled')
    expect(kept).toEqual(late.status === 'fulfilled' ? ['volume', 'flow'] : ['volume'])
  })
})

test('an entry names the earlier one of the same job and form map', async () => {
  await fillWhole('fill-1')
  await fillWhole('fill-2', { map: { id: 'map-2', name: 'Marrowby permit, sheet 4', version: 1 } })
  await fillWhole('fill-3')
  const entries = await listEntries()
  expect(entries.map(({ number, earlier }) => [number, earlier])).toEqual([
    [3, 1],
    [2, undefined],
    [1, undefined],
  ])
})

test('nothing that the book offers changes or deletes an entry', async () => {
  const entry = await fillWhole('fill-1')
  const modules = import.meta.glob<Record<string, unknown>>('../../lib/book/*.ts', { eager: true })
  const names = Object.values(modules).flatMap((one) => Object.keys(one).filter((name) => name !== 'default'))
  expect(names.filter((name) => /entr/i.test(name)).toSorted()).toEqual([
    'EntryPlanner',
    'addEntry',
    'allEntries',
    'countEntries',
    'entriesForwards',
    'entriesShown',
    'entryOfFill',
    'entrySchema',
    'fillEntrySchema',
    'getEntry',
    'keptEntry',
    'listEntries',
    'soundEntry',
  ])
  await expect(entriesModule.addSealed([{ ...entry, engine: 'other' }])).rejects.toThrow('constraint')
  await expect(startFill(fakeFill('fill-1'), context)).rejects.toThrow('entry 1')
  expect(await getEntry(1)).toEqual(entry)
})

async function three() {
  await fillWhole('fill-1')
  await fillWhole('fill-2', { job: { id: 'job-2', name: '9 Quill Street' } })
  await startFill(fakeFill('fill-3', { job: { id: 'job-2', name: '9 Quill Street' } }), context)
  await addFillLine('fill-3', fakeLine('flow', { control: 'Fan flow', readBack: '8,011', outcome: 'differs' }))
  await endFill('fill-3')
}
const numbers = async (listing: Parameters<typeof listRows>[0]) => (await listRows(listing)).map(({ number }) => number)

describe('the list', () => {
  test('is newest first and comes in pages', async () => {
    await three()
    expect(await numbers({})).toEqual([3, 2, 1])
    expect(await numbers({ limit: 2 })).toEqual([3, 2])
    expect(await numbers({ limit: 2, before: 2 })).toEqual([1])
  })

  test('is searched by address, job, control, intended text and text read back', async () => {
    await three()
    expect(await numbers({ text: 'larchcounty quill' })).toEqual([3, 2])
    expect(await numbers({ text: 'tannery' })).toEqual([1])
    expect(await numbers({ text: 'FAN FLOW' })).toEqual([3])
    expect(await numbers({ text: '8,011' })).toEqual([3])
    expect(await numbers({ text: '15810' })).toEqual([3, 2, 1])
    expect(await numbers({ text: 'nowhere' })).toEqual([])
  })

  test('is filtered by job, outcome and day', async () => {
    await three()
    const today = new Date()
    const day = (offset: number) => {
      const date = new Date(today.getFullYear(), today.getMonth(), today.getDate() + offset)
      return [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((n) => String(n).padStart(2, '0')).join('-')
    }
    expect(await numbers({ job: 'job-2' })).toEqual([3, 2])
    expect(await numbers({ outcome: 'differs' })).toEqual([3])
    expect(await numbers({ outcome: 'to look at' })).toEqual([3])
    expect(await numbers({ from: day(0), to: day(0) })).toEqual([3, 2, 1])
    expect(await numbers({ from: day(1) })).toEqual([])
    expect(await numbers({ to: day(-1) })).toEqual([])
  })

  test('finds what is rare in a book of several blocks, by beginnings of words', async () => {
    for await (const batch of manyEntries(2100, 2)) await entriesModule.addSealed(batch)
    expect(await numbers({ text: 'apply/7/part' })).toEqual([7])
    expect(await numbers({ text: 'appl/7/part' })).toEqual([])
    expect(await numbers({ limit: 3, before: 300 })).toEqual([299, 298, 297])
    const all = await numbers({ limit: 3000 })
    const cases: Listing[] = [
      { text: 'WEIR' },
      { text: 'w' },
      { text: '31 quarry' },
      { map: 'map-3', text: 'dairy lane' },
      { job: 'job-500' },
      { from: '2016-01-05', to: '2016-01-07' },
      { status: 'entered', text: 'pell' },
      { outcome: 'refused' },
    ]
    // Asked of the index, and asked of every row.
    const rows = await listRows({ limit: 3000 })
    for (const listing of cases) {
      const fits = passes(listing)
      expect(await numbers({ ...listing, limit: 3000 })).toEqual(rows.filter(fits).map(({ number }) => number))
      expect(rows.some(fits)).toBe(true)
    }
    expect(all).toHaveLength(2100)
  }, 60_000)
})
