import { describe, expect, test, vi } from 'vitest'
import { answer } from '../../lib/extension/answer.ts'
import { getEntry } from '../../lib/book/entries.ts'
import { closeUnended } from '../../lib/book/fills.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { mapVersions } from '../../lib/book/maps.ts'
import type { FillEntry, OpenFill } from '../../lib/book/schema.ts'
import { listRows } from '../../lib/book/search.ts'
import { begunSince, underWayIn } from '../../lib/book/under-way.ts'
import type { Job } from '../../lib/job/schema.ts'
import { fakeFill, fakeJob, fakeLine, fakeMap } from '../book/fake.ts'
import '../book/fresh.ts'

const self = 'this-extension'
const sender = { id: self, tab: { id: 7 } }
const surroundings = { self, engine: '0.1.0', openBook: vi.fn<(entry: number | undefined) => Promise<void>>() }
const send = (message: unknown, from: Parameters<typeof answer>[1] = sender) => answer(message, from, surroundings)

test('a fill told message by message becomes an entry', async () => {
  const answers = [
    await send({ type: 'fill-started', fill: fakeFill('fill-1') }),
    await send({ type: 'fill-line', fill: 'fill-1', line: fakeLine('flow') }),
    await send({ type: 'fill-ended', fill: 'fill-1' }),
  ]
  expect(answers).toEqual([{ ok: true }, { ok: true }, { ok: true, entry: 1 }])
  expect(await getEntry(1)).toMatchObject({ id: 'fill-1', engine: '0.1.0', lines: [fakeLine('flow')] })
})

test.each([
  ['those that the plan was made from, though they were typed on since', (job: Job) => JSON.stringify(job), '15810'],
  ['as they stand in the book, where the plan brings none', () => undefined, '20000'],
  ['as they stand in the book, where those of the plan cannot be read', () => '{"id":', '20000'],
  [
    'as they stand in the book, where the plan brings those of another job',
    (job: Job) => JSON.stringify({ ...job, id: 'another' }),
    '20000',
  ],
])('an entry holds the readings: %s', async (_, brought, volume) => {
  const job = await saveJob(fakeJob())
  const readings = brought(job)
  await saveJob({ ...job, building: { ...job.building, volume: '20000' } })
  const fill = fakeFill('fill-1')
  await send({ type: 'fill-started', fill: { ...fill, job: { ...fill.job, ...(readings && { readings }) } } })
  await send({ type: 'fill-ended', fill: 'fill-1' })
  const entry = (await getEntry(1)) as FillEntry
  expect(entry.readings?.building.volume).toBe(volume)
  expect(entry.job).toEqual(fill.job)
})

test('what a page changed of an earlier step is noted beside the step that is filled in the same tab', async () => {
  const [first, second] = [fakeFill('step-1'), fakeFill('step-2')]
  const drawnAway = { ...fakeLine('flow'), outcome: 'differs', readBack: '' }
  const answers = [
    await send({ type: 'fill-started', fill: first }),
    await send({ type: 'fill-line', fill: 'step-1', line: fakeLine('flow') }),
    await send({ type: 'fill-ended', fill: 'step-1' }),
    await send({ type: 'fill-started', fill: second }),
    await send({ type: 'fill-late', fill: first, lines: [drawnAway] }),
    await send({ type: 'fill-line', fill: 'step-2', line: fakeLine('flow') }),
    await send({ type: 'fill-ended', fill: 'step-2' }),
  ]
  expect(answers.filter(({ ok }) => !ok)).toEqual([])
  expect(await getEntry(2)).toMatchObject({ id: 'step-1/2', lines: [{ outcome: 'differs' }] })
  expect(await getEntry(3)).toMatchObject({ id: 'step-2', lines: [fakeLine('flow')] })
})

test('what began after the start of the browser goes on, while what it cut short becomes an entry', async () => {
  await send({ type: 'fill-started', fill: fakeFill('cut-short') }, { id: self, tab: { id: 3 } })
  await new Promise((done) => setTimeout(done, 5))
  const start = new Date()
  await send({ type: 'fill-started', fill: fakeFill('new') })
  await closeUnended(begunSince(start))
  expect(await send({ type: 'fill-line', fill: 'new', line: fakeLine('flow') })).toEqual({ ok: true })
  expect(await send({ type: 'fill-ended', fill: 'new' })).toEqual({ ok: true, entry: 2 })
  expect(await getEntry(1)).toMatchObject({ id: 'cut-short', complete: false })
})

test('of files that go into a form the entry keeps name, size and SHA-256', async () => {
  const files = [
    { binding: 'report', name: 'report.pdf', type: 'application/pdf', bytes: 'YWJj' },
    { binding: 'table', name: 'figures.csv', type: 'text/csv', text: '' },
  ]
  expect(await send({ type: 'fill-started', fill: fakeFill('fill-1'), files })).toEqual({ ok: true })
  await send({ type: 'fill-ended', fill: 'fill-1' })
  // The digests of “abc” and of the empty message: NIST, examples to FIPS 180-4 and the CAVP test vectors.
  expect((await getEntry(1)) as FillEntry).toHaveProperty('files', [
    {
      binding: 'report',
      name: 'report.pdf',
      type: 'application/pdf',
      size: 3,
      sha256: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    },
    {
      binding: 'table',
      name: 'figures.csv',
      type: 'text/csv',
      size: 0,
      sha256: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
    },
  ])
  expect((await listRows({ text: 'ba7816bf8f01' })).map(({ number }) => number)).toEqual([1])
})

test('a file that did not come whole keeps the fill from beginning, in words', async () => {
  const files = [{ binding: 'report', name: 'report.pdf', type: 'application/pdf', bytes: 'YWJ' }]
  expect(await send({ type: 'fill-started', fill: fakeFill('fill-1'), files })).toEqual({
    ok: false,
    message: 'report.pdf did not reach the book whole. Close the plan, open it again and start anew.',
  })
})

test('a form map is kept, and its version told', async () => {
  expect(await send({ type: 'save-map', map: fakeMap() })).toEqual({ ok: true, map: { id: 'map-1', version: 1 } })
  expect(await mapVersions('map-1')).toHaveLength(1)
})

test('the book is opened at an entry', async () => {
  expect(await send({ type: 'open-book', entry: 3 })).toEqual({ ok: true })
  expect(surroundings.openBook).toHaveBeenCalledWith(3)
})

describe('refused in words:', () => {
  const started = { type: 'fill-started', fill: fakeFill('fill-1') }

  test.each([
    ['another extension', { id: 'another', tab: { id: 7 } }],
    ['nobody', {}],
    ['no tab', { id: self }],
  ])('a message of %s', async (_, from) => {
    expect(await send(started, from)).toEqual({
      ok: false,
      message: 'The book takes messages only from this extension’s own helper in a tab.',
    })
    expect(await send({ type: 'fill-ended', fill: 'fill-1' })).toMatchObject({ ok: false })
  })

  test('a message that is not one', async () => {
    for (const message of [undefined, 'fill', { type: 'wipe' }, { type: 'fill-line', fill: 1 }]) {
      expect(await send(message)).toMatchObject({ ok: false, message: expect.stringContaining('did not understand') })
    }
  })

  test('a line of a fill that nobody started', async () => {
    expect(await send({ type: 'fill-line', fill: 'fill-9', line: fakeLine('flow') })).toEqual({
      ok: false,
      message: 'The book knows no such fill. Close the plan, open it again and start anew.',
    })
  })
})

const open = (tab: number, touched: string): OpenFill => ({
  id: 'fill-1',
  fill: fakeFill('fill-1'),
  engine: '0.1.0',
  tab,
  touched,
  count: 0,
})

test('a fill is under way while its tab is there and it wrote lately', () => {
  const now = new Date('2026-02-11T16:50:00.000Z')
  const runs = underWayIn(new Set([7]), now)
  expect(runs(open(7, '2026-02-11T16:49:00.000Z'))).toBe(true)
  expect(runs(open(8, '2026-02-11T16:49:00.000Z'))).toBe(false)
  expect(runs(open(7, '2026-02-11T16:40:00.000Z'))).toBe(false)
})
