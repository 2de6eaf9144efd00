import { beforeEach, describe, expect, test } from 'vitest'
import { attach, bytesOf, largest, typeOf } from '../../lib/book/attachments.ts'
import { csvParts } from '../../lib/book/csv.ts'
import { database } from '../../lib/book/database.ts'
import { entriesForwards, getEntry, verify } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { addNote, notesOf, timeline } from '../../lib/book/notes.ts'
import { isFill } from '../../lib/book/rows.ts'
import type { FillEntry, FollowUp } from '../../lib/book/schema.ts'
import { listRows, rowsDue, type Listing } from '../../lib/book/search.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import './fresh.ts'

const job = { id: 'job-1', name: '14 Tannery Row' }

beforeEach(async () => {
  for (const id of ['a', 'b']) {
    await startFill(fakeFill(id), context)
    for (const { binding } of fakeFill(id).planned) await addFillLine(id, fakeLine(binding))
    await endFill(id)
  }
})

const followUp = (of: number, overrides: Partial<FollowUp>) =>
  addNote(
    {
      kind: 'follow-up',
      job,
      of,
      status: 'submitted',
      reason: '',
      confirmation: '',
      due: '',
      keepUntil: '',
      text: '',
      ...overrides,
    },
    '0.2.0',
  )

const found = async (listing: Listing) => (await listRows(listing)).map(({ number }) => number)

const row = async (number: number) => {
  const one = (await listRows({ limit: 100 })).find((each) => each.number === number)
  return one && isFill(one) ? one : undefined
}

describe('a follow-up', () => {
  test('is a new entry of the chain that names the old one; the old one stays', async () => {
    const old = await getEntry(1)
    const note = await followUp(1, { confirmation: 'LC-88213', due: '2026-03-01' })
    expect(note).toMatchObject({ number: 3, of: 1, about: old?.hash, previous: (await getEntry(2))?.hash })
    expect(await getEntry(1)).toEqual(old)
    expect(await verify()).toMatchObject({ ok: true, count: 3 })
  })

  test('gives the entry its status, number and dates until the next one', async () => {
    expect(await row(1)).toMatchObject({ status: 'entered' })
    await followUp(1, { confirmation: 'LC-88213', due: '2026-03-01', keepUntil: '2033-03-01' })
    await followUp(1, { status: 'rejected', reason: 'No photo of the gauge' })
    expect(await row(1)).toMatchObject({ status: 'rejected', confirmation: 'LC-88213', due: '2026-03-01' })
    expect((await rowsDue('2026-03-14')).map(({ number }) => number)).toEqual([1])
    await followUp(1, { status: 'resubmitted', resubmittedAs: 2 })
    const last = await row(1)
    expect(last).toMatchObject({ status: 'resubmitted', keepUntil: '2033-03-01' })
    expect(last?.due).toBeUndefined()
    expect(await rowsDue('2026-03-14')).toEqual([])
  })

  test('is found by its number, and the entry it is about too', async () => {
    await followUp(2, { confirmation: 'LC-88213' })
    expect(await found({ text: 'lc 88213' })).toEqual([3, 2])
    expect(await found({ status: 'submitted' })).toEqual([2])
    expect(await found({ status: 'entered' })).toEqual([1])
    expect(await found({ kind: 'follow-up' })).toEqual([3])
    expect(await found({ order: 'oldest' })).toEqual([1, 2, 3])
  })

  test('sorts by what is due first', async () => {
    await followUp(1, { due: '2026-05-01' })
    await followUp(2, { due: '2026-04-01' })
    expect((await listRows({ order: 'due first' })).map(({ number }) => number)).toEqual([2, 1])
  })

  test('of an entry that is not there is refused', async () => {
    await expect(followUp(9, {})).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: The book has no entry 9. Choose an entry of the list.]`,
    )
    await expect(followUp(1, { due: 'soon' })).rejects.toThrow('due is not what the book expects')
    expect(await verify()).toMatchObject({ count: 2 })
  })

  test('stands in the table for a spreadsheet', async () => {
    await followUp(1, { status: 'rejected', reason: '=No photo', confirmation: 'LC-88213' })
    let csv = ''
    for await (const part of csvParts(entriesForwards())) csv += part
    expect(csv.trimEnd().split('\r\n').at(-1)).toMatch(
      /^3,[^,]+,follow-up,14 Tannery Row,,,,,,1,,,,,,,,"rejected; LC-88213;' =No photo",rejected,LC-88213,,,/,
    )
  })
})

test('notes added at the same time all stand in one chain', async () => {
  await Promise.all(Array.from({ length: 8 }, (_, at) => followUp(1, { text: `note ${at}` })))
  expect(await verify()).toMatchObject({ ok: true, count: 10 })
  expect(await notesOf((await getEntry(1)) as FillEntry)).toHaveLength(8)
})

const correct = (reason: string) => addNote({ kind: 'correction', job, of: 1, reason, text: '15790' }, '0.2.0')

test('a correction needs its reason', async () => {
  await expect(correct('')).rejects.toThrow('reason')
  await correct('The volume is that of the plans.')
  expect((await timeline('job-1')).map(({ kind }) => kind)).toEqual(['fill', 'fill', 'correction'])
})

const file = (bytes: number[], name = 'gauge.jpg') => {
  const data = Uint8Array.from(bytes)
  return { name, size: data.length, arrayBuffer: async () => data.buffer }
}
const photo = [0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]

describe('an attachment', () => {
  test('stands in the chain by its hash; its bytes are kept once', async () => {
    const first = await attach(file(photo), { job, of: 1, text: 'At −50 Pa' }, '0.2.0')
    await attach(file(photo, 'again.jpg'), { job, of: 2, text: '' }, '0.2.0')
    expect(first.file).toMatchObject({ type: 'image/jpeg', size: 7 })
    expect(await (await database()).count('blobs')).toBe(1)
    expect(new Uint8Array(await bytesOf(first.file))).toEqual(Uint8Array.from(photo))
    expect(await verify()).toMatchObject({ ok: true, count: 4 })
  })

  test('of a wrong type, empty or too large is refused in a sentence', async () => {
    const to = { job, of: 1, text: '' }
    await expect(
      attach(file([0x3c, 0x73, 0x76, 0x67], 'plan.jpg'), to, '0'),
    ).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: plan.jpg is not a photo (JPEG, PNG, WebP) or a PDF inside, whatever its name says. Save it as one of these first.]`,
    )
    await expect(attach(file([], 'none.png'), to, '0')).rejects.toThrow('none.png is not a photo')
    await expect(attach({ ...file(photo), size: largest + 1 }, to, '0')).rejects.toThrowErrorMatchingInlineSnapshot(
      `[BookError: gauge.jpg is too large: 21 MB, where the book takes 20 MB. Save the photo smaller, or split the document.]`,
    )
    expect(await verify()).toMatchObject({ count: 2 })
  })

  test('that was changed or lost is said to be', async () => {
    const { file: kept } = await attach(file(photo), { job, text: '' }, '0')
    const db = await database()
    await db.put('blobs', { sha256: kept.sha256, type: kept.type, bytes: Uint8Array.from([1]).buffer })
    await expect(bytesOf(kept)).rejects.toThrow('is not what was attached')
    await db.delete('blobs', kept.sha256)
    await expect(bytesOf(kept)).rejects.toThrow('is not in this book')
  })
})

// The first bytes: ISO/IEC 10918-1 (JPEG), W3C PNG, ISO 32000 (PDF), RFC 9649 (WebP).
test.each([
  ['image/png', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]],
  ['application/pdf', [0x25, 0x50, 0x44, 0x46, 0x2d, 0x31]],
  ['image/webp', [0x52, 0x49, 0x46, 0x46, 0, 0, 0, 0, 0x57, 0x45, 0x42, 0x50]],
  [undefined, [0x47, 0x49, 0x46]],
])('%s is known by its first bytes', (type, bytes) => {
  expect(typeOf(Uint8Array.from(bytes).buffer)).toBe(type)
})
