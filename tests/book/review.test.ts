import { beforeEach, describe, expect, test } from 'vitest'
import { attach } from '../../lib/book/attachments.ts'
import { getEntry } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { saveMap } from '../../lib/book/maps.ts'
import { addNote } from '../../lib/book/notes.ts'
import { checkReview, compareRetest } from '../../lib/book/review.ts'
import { readReview, reviewParts, withNotes } from '../../lib/book/review-file.ts'
import { emptyNotes, getReview, listReviews, openReview, saveReviewNotes } from '../../lib/book/reviews.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { material } from '../../lib/job/material.ts'
import type { Job } from '../../lib/job/schema.ts'
import { textOf } from '../../lib/form/fill/text.ts'
import { labelOf } from '../../lib/reduce/figures/index.ts'
import { generator } from '../random.ts'
import { context, fakeBinding, fakeFill, fakeLine, fakeMap } from './fake.ts'
import './fresh.ts'
import { lineAt, lineNamed, turned } from './tamper.ts'
import { BookError } from '../../lib/book/error.ts'

let job: Job
const photo = Uint8Array.from([0xff, 0xd8, 0xff, 7])

beforeEach(async () => {
  job = await saveJob(demoJob())
  const binding = fakeBinding('flow', 'CFM at 50 Pa')
  const map = await saveMap(fakeMap({ bindings: [binding] }))
  const written = textOf(binding.source, material(job, []), binding.control)
  const text = 'text' in written ? written.text : ''
  const about = { id: job.id, name: '14 Tannery Row' }
  for (const id of ['a', 'other', 'b']) {
    const of = id === 'other' ? { id: 'job-9', name: 'Another' } : about
    const planned = [{ binding: 'flow', control: 'CFM at 50 Pa', section: 'Part C', source: 'after: CFM50', text }]
    await startFill(fakeFill(id, { job: of, map: { id: map.id, name: map.name, version: 1 }, planned }), context)
    await addFillLine(id, fakeLine('flow', { intended: text, readBack: text }))
    await endFill(id)
  }
  const file = { name: 'gauge.jpg', size: 4, arrayBuffer: async () => photo.slice().buffer }
  await attach(file, { job: about, of: 1, text: '' }, '0.2.0')
})

async function blob(parts: AsyncIterable<string>): Promise<File> {
  const texts: string[] = []
  for await (const part of parts) texts.push(part)
  return new File(texts, 'review.json')
}
const made = () => blob(reviewParts(job, '0.2.0'))

describe('a review file', () => {
  test('lets every figure be computed anew, and every entry be checked', async () => {
    const file = await readReview(await made())
    const result = await checkReview(file)
    expect(result.figures.length).toBeGreaterThan(10)
    expect(new Set(result.figures.map((one) => one.result))).toEqual(new Set(['reproduced']))
    const named = result.figures.map(({ test: role, figure, unit }) => `${role}: ${labelOf(figure, unit)}`)
    expect(named, 'no two rows bear one name').toEqual([...new Set(named)])
    expect(result.checks.every(({ same }) => same)).toBe(true)
    expect(result.texts.map(({ entry, result: found }) => [entry, found])).toEqual([
      [1, 'reproduced'],
      [3, 'reproduced'],
    ])
    expect(result.entries.map(({ entry, fits }) => [entry, fits])).toEqual([
      [1, true],
      [3, true],
      [4, true],
    ])
    expect(result.head).toBe((await getEntry(4))?.hash)
    expect([...file.blobs.values()].map(({ bytes }) => bytes)).toEqual([photo])
  })

  test('with a figure that does not come of its readings shows it', async () => {
    const file = await readReview(await made())
    const { report } = file.reports[0]!
    const name = Object.keys(report!.figures)[0]!
    report!.figures[name]!.value *= 0.97
    const { figures } = await checkReview(file)
    expect(figures.filter(({ result }) => result === 'different').map(({ figure }) => figure)).toEqual([name])
  })

  test('with an entry of another chain, or changed and sealed anew, shows it', async () => {
    const file = await readReview(await made())
    file.entries[1] = { ...file.entries[1]!, at: '2020-01-01T00:00:00.000Z' }
    file.proof.hashes[3] = '0'.repeat(64)
    expect((await checkReview(file)).entries.map(({ message }) => message)).toEqual([
      '',
      'is not what was written: its fingerprint does not fit.',
      'does not stand in the chain at this place.',
    ])
  })

  test('goes to a reviewer and comes back with findings, which join the chain', async () => {
    const review = await openReview(await made())
    const finding = { about: 'after: ACH50', weight: 'to correct' as const, text: 'The volume is that of the plans.' }
    await saveReviewNotes(review.id, { ...emptyNotes(), reviewer: 'County desk', findings: [finding] })
    expect((await listReviews()).map(({ id }) => id)).toEqual([review.id])
    const kept = await getReview(review.id)
    const back = await readReview(await blob(withNotes(new Blob([kept!.file]), kept!.notes)))
    expect(back.notes?.findings).toEqual([finding])
    expect((await checkReview(back)).entries.every(({ fits }) => fits)).toBe(true)
    const { reviewer, findings } = back.notes!
    const about = { id: job.id, name: '14 Tannery Row' }
    await addNote({ kind: 'review', job: about, reviewer, findings, text: '' }, '0.2.0')
    expect(await getEntry(5)).toMatchObject({ kind: 'review', reviewer: 'County desk', findings: [finding] })
  })

  test('shows every turned bit, and names its line', async () => {
    const bytes = new Uint8Array(await (await made()).arrayBuffer())
    const random = generator(13)
    for (let sample = 0; sample < 40; sample++) {
      const bit = Math.floor(random() * bytes.length * 8)
      const error: unknown = await readReview(new Blob([turned(bytes, bit)])).catch((found: unknown) => found)
      expect(error, `bit ${bit}`).toBeInstanceOf(BookError)
      expect(lineNamed(error as BookError), `bit ${bit}`).toBe(lineAt(bytes, bit >> 3))
    }
  })

  test('is told from other files', async () => {
    await expect(readReview(new Blob(['{}']))).rejects.toThrow('Line 1 of the file is not the beginning')
    expect(await listReviews()).toEqual([])
  })
})

const bands = { fine: 10, fault: 25 }

// Hand arithmetic: 770 / 700 is 10 % more, 525 / 700 is 25 % less.
test.each([
  [700, 770, 10, 'fine'],
  [700, 771, 100 * (71 / 700), 'to look at'],
  [700, 525, -25, 'to look at'],
  [700, 524, 100 * (-176 / 700), 'fault'],
])('a figure of %d measured again as %d', (recorded, retest, percent, band) => {
  const found = compareRetest(recorded, retest, bands)
  expect(found.percent).toBeCloseTo(percent, 10)
  expect(found.band).toBe(band)
})

test('bands out of order, or a figure of zero, are refused', () => {
  expect(() => compareRetest(700, 700, { fine: 30, fault: 25 })).toThrow('bands')
  expect(() => compareRetest(0, 700, bands)).toThrow('zero')
})
