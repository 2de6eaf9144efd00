/** What a reviewer is told of a review file: each in words. */
import { beforeEach, describe, expect, test } from 'vitest'
import { attach } from '../../lib/book/attachments.ts'
import { database } from '../../lib/book/database.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { addNote } from '../../lib/book/notes.ts'
import { checkReview } from '../../lib/book/review.ts'
import { readReview, reviewParts, type ReviewFile } from '../../lib/book/review-file.ts'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { saveDevice } from '../../lib/book/devices.ts'
import type { Job } from '../../lib/job/schema.ts'
import { basisOf } from '../../lib/report/basis.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import './fresh.ts'

let job: Job
const about = () => ({ id: job.id, name: '14 Tannery Row' })
const write: Parameters<typeof startFill>[1]['write'] = (typed, devices) => basisOf(typed, devices, '0.1.0')

async function fill(id: string, line: Parameters<typeof fakeLine>[1] = {}): Promise<void> {
  const planned = [{ binding: 'flow', control: 'CFM at 50 Pa', section: 'Part C', source: 'after: CFM50', text: '754' }]
  await startFill(fakeFill(id, { job: about(), planned }), { ...context, write })
  await addFillLine(id, fakeLine('flow', line))
  await endFill(id)
}

beforeEach(async () => {
  await saveDevice(demoDevice())
  job = await saveJob(demoJob())
  await fill('a')
  await startFill(fakeFill('other', { job: { id: 'job-9', name: 'Another' } }), context)
  await endFill('other')
  await fill('b')
  await addNote({ kind: 'correction', job: about(), of: 3, reason: 'Plans', text: '' }, '0.1.0')
})

async function made(): Promise<ReviewFile> {
  const texts: string[] = []
  for await (const part of reviewParts(job, '0.1.0')) texts.push(part)
  return readReview(new Blob(texts))
}
const told = async (file: ReviewFile) => (await checkReview(file)).told.map(({ about: of, text }) => `${of}: ${text}`)

describe('a reviewer is told', () => {
  test('nothing of a file that is whole', async () => {
    const file = await made()
    expect(await told(file)).toEqual([])
    expect(file.proof.ofJob).toEqual([1, 3, 4])
  })

  test('that readings were changed after the fill, with both figures', async () => {
    const [, after] = job.tests
    const points = after!.sheet.points.map((point) =>
      Object.assign(structuredClone(point), { flow: String(Number(point.flow) * 0.8) }),
    )
    const tests = job.tests.with(1, { ...after!, sheet: { ...after!.sheet, points } })
    job = await saveJob({ ...job, tests })
    const lines = await told(await made())
    expect(lines).toHaveLength(2)
    expect(lines[0]).toMatch(
      /^entry 1: after: Readings, device or sizes were changed after the fill\. .*ACH50: 2\.86 1\/h at the fill, 2\.29 1\/h now/,
    )
  })

  test('that a device was changed after the fill', async () => {
    const [, after] = job.tests
    const points = [{ pressure: '-50', flow: '', devicePressure: '80', range: 'middle' }]
    const sheet = { ...after!.sheet, reading: 'device' as const, procedure: 'one-point' as const, points }
    job = await saveJob({ ...job, tests: job.tests.with(1, { ...after!, sheet }) })
    await fill('c')
    const ranges = demoDevice().ranges.map((range) => Object.assign(range, { coefficient: '60' }))
    await saveDevice({ ...demoDevice(), ranges })
    expect((await told(await made())).find((line) => line.startsWith('entry 5'))).toContain('changed after the fill')
  })

  test('that an entry holds figures that its readings do not give', async () => {
    const file = await made()
    const entry = file.entries[0]!
    if (entry.kind !== 'fill') throw new Error('not a fill')
    entry.basis!.tests[1]!.figures['air-changes-50']!.value = 2.1
    expect((await told(file))[0]).toMatch(
      /^entry 1: after: The entry holds figures .*ACH50: 2\.10 1\/h in the entry, 2\.86 1\/h here\.$/,
    )
  })

  test('that entries were left out, by count and number, and who names them', async () => {
    const file = await made()
    file.entries.splice(1, 1)
    expect(await told(file)).toEqual([
      'the whole file: The book holds 3 entries of this job, and 1 of them are not in the file: 3.',
    ])
    file.proof.ofJob = [1, 4]
    expect(await told(file)).toEqual(['entry 4: It names entry 3, which is not in the file.'])
    delete file.proof.ofJob
    expect((await told(file))[0]).toContain('does not say how many entries')
  })

  test('that an entry left the list by way of its row', async () => {
    await (await database()).delete('rows', 1)
    expect((await told(await made()))[0]).toContain('1 of them are not in the file: 1.')
  })

  test('what the page held instead, what was not reached, and what ended early', async () => {
    const planned = [
      { binding: 'flow', control: 'CFM at 50 Pa', section: '', source: '', text: '754' },
      { binding: 'ach', control: 'ACH50', section: '', source: '', text: '2.86' },
    ]
    await startFill(fakeFill('c', { job: about(), planned }), { ...context, write })
    await addFillLine('c', fakeLine('flow', { readBack: '745', outcome: 'differs' }))
    await endFill('c')
    expect(await told(await made())).toEqual([
      'entry 5: The fill did not go through to its end.',
      'entry 5: CFM at 50 Pa: “754” was to be entered; the page then held “745” (differs).',
      'entry 5: ACH50: “2.86” was to be entered, and the fill did not reach it.',
    ])
  })

  test('of times that run backwards, and of entries out of a file', async () => {
    const file = await made()
    file.entries[1]!.at = '2001-01-01T00:00:00.000Z'
    file.proof.takenIn = [{ from: 1, to: 1, at: '2026-03-01T08:00:00.000Z', file: 'office.json' }]
    expect(await told(file)).toEqual([
      expect.stringMatching(/^entry 1: It came out of a file \(office\.json, taken in at /),
      expect.stringMatching(/^entry 3: It bears the time 2001-01-01T00:00:00\.000Z, which is before that of entry 1/),
    ])
  })

  test('of an attachment that is gone, and of a check that came out otherwise', async () => {
    const bytes = Uint8Array.from([0xff, 0xd8, 0xff, 7])
    await attach(
      { name: 'gauge.jpg', size: 4, arrayBuffer: async () => bytes.buffer },
      { job: about(), text: '' },
      '0.1.0',
    )
    await (await database()).clear('blobs')
    const file = await made()
    const [check] = file.reports[0]!.report!.checks
    check!.outcome = check!.outcome === 'bad' ? 'good' : 'bad'
    expect(await told(file)).toEqual([
      'entry 5: gauge.jpg is not in the file, only its fingerprint.',
      expect.stringMatching(/^before: The check “.*” is bad in the file and .* here\.$/),
    ])
  })
})
