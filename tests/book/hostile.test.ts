import { beforeAll, expect, test } from 'vitest'
import { asItIs } from '../../lib/book/attachments.ts'
import { toBase64 } from '../../lib/book/base64.ts'
import { database } from '../../lib/book/database.ts'
import { verify } from '../../lib/book/entries.ts'
import { BookError } from '../../lib/book/error.ts'
import { planImport } from '../../lib/book/import.ts'
import { openBookFile, wholeBook } from '../../lib/book/json.ts'
import { readReview } from '../../lib/book/review-file.ts'
import { readSealed, sealedFile, type Item } from '../../lib/book/sealed.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { saveMap } from '../../lib/book/maps.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { sha256 } from '../../lib/book/sha256.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { generator } from '../random.ts'
import { context, fakeFill, fakeLine, fakeMap } from './fake.ts'
import './fresh.ts'
import { known, mangled, resealed } from './hostile.ts'

let text = ''
const items: Item[] = []

beforeAll(async () => {
  await saveJob(demoJob())
  await saveMap(fakeMap())
  await startFill(fakeFill('a'), context)
  await addFillLine('a', fakeLine('flow'))
  await endFill('a')
  for await (const part of wholeBook()) text += part
  const kinds = ['head', 'job', 'device', 'map', 'entry', 'settings']
  for await (const { kind, value } of readSealed(new Blob([text]), kinds)) items.push({ kind, value })
})

/** Refused in a sentence, or read as a plan; anything else is a fault. Nothing is in the book either way. */
async function outcome(file: string | Blob): Promise<'refused' | 'planned'> {
  try {
    await planImport(await openBookFile(typeof file === 'string' ? new Blob([file]) : file))
    return 'planned'
  } catch (error) {
    if (!(error instanceof BookError)) throw error
    if (!/^[A-Z].*\.$/s.test(error.message)) throw new Error(`Not a sentence: ${error.message}`, { cause: error })
    return 'refused'
  }
}

test.each(known())('%s is refused in a sentence, as a book and as a review', async (_, file) => {
  expect(await outcome(file)).toBe('refused')
  await expect(readReview(new Blob([file]))).rejects.toBeInstanceOf(BookError)
  expect(({} as { polluted?: number }).polluted).toBeUndefined()
})

const pageInside = '<!doctype html><title>report</title><form action="//elsewhere.example"><input type="password">'
const photo = [0xff, 0xd8, 0xff, 0xe0]

/** A book file, sealed as it must be, with one attachment. */
async function withAttachment(bytes: Uint8Array<ArrayBuffer>, type: string): Promise<Blob> {
  const blob = { kind: 'blob', value: { sha256: await sha256(bytes), type, bytes: toBase64(bytes) } }
  const parts: string[] = []
  for await (const part of sealedFile([...items.filter(({ kind }) => kind === 'head'), blob])) parts.push(part)
  return new Blob(parts)
}

test('an attachment that is a page inside is refused with its whole file, whatever its type says', async () => {
  const page = new TextEncoder().encode(pageInside)
  await expect(openBookFile(await withAttachment(page, 'application/pdf')).then(planImport)).rejects.toThrow(
    /Line 3 of the file: .* is not a photo .* or a PDF inside/,
  )
  expect(await outcome(await withAttachment(Uint8Array.from(photo), 'text/html'))).toBe('planned')
})

test('an attachment is opened as what it is inside, and as nothing when it is neither photo nor PDF', () => {
  expect(asItIs(new TextEncoder().encode(pageInside).buffer).type).toBe('application/octet-stream')
  expect(asItIs(Uint8Array.from(photo).buffer).type).toBe('image/jpeg')
})

test('what was put out of shape is refused, or read as what it is; nothing is changed and nothing runs', async () => {
  const random = generator(21)
  for (let round = 0; round < 60; round++) {
    await outcome(mangled(text, random))
    await outcome(await resealed(items, random))
  }
  const db = await database()
  for (const store of ['jobs', 'maps', 'entries', 'devices'] as const) expect(await db.count(store)).toBe(0)
  // A new book says in which form its rows are; nothing else.
  expect(await db.getAllKeys('single')).toEqual(['form'])
  expect(({} as { polluted?: number }).polluted).toBeUndefined()
  expect((globalThis as { hacked?: number }).hacked).toBeUndefined()
}, 60_000)

test('a file of one line of 200 MB is refused before it is read whole', async () => {
  const part = new Blob(['x'.repeat(1_000_000)])
  const huge = new Blob(['[\n', ...Array.from({ length: 200 }, () => part)])
  await expect(planImport(await openBookFile(huge))).rejects.toThrowErrorMatchingInlineSnapshot(
    `[BookError: Line 2 of the file is longer than any that a book writes. Choose another file.]`,
  )
  await expect(openBookFile(new Blob(['{', ...Array.from({ length: 200 }, () => part)]))).rejects.toThrow('too long')
})

test('half a character, as a page may hold it, does not keep a fill out of the book', async () => {
  await startFill(fakeFill('b', { page: { ...fakeFill('b').page, title: 'Form \ud83d' } }), context)
  await addFillLine('b', fakeLine('flow', { readBack: '\udc00754' }))
  const entry = await endFill('b')
  expect([entry.page.title, entry.lines[0]?.readBack]).toEqual(['Form \ufffd', '\ufffd754'])
  expect(await verify()).toMatchObject({ ok: true, count: 1 })
})

test('a map of a file with the prototype among its choices keeps an own key at most', async () => {
  const map = JSON.parse(
    JSON.stringify(fakeMap()).replace('"unit":"cfm"', '"choices":{"__proto__":"yes","constructor":"no"},"unit":"cfm"'),
  ) as unknown
  let file = ''
  for await (const part of sealedFile([items[0]!, { kind: 'map', value: map }])) file += part
  await outcome(file)
  expect(({} as { yes?: string }).yes).toBeUndefined()
})
