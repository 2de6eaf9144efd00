/** A thousand turned bits in a book file and in a review file, and ten thousand hostile files. */
import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { closeDatabase, database } from '../../lib/book/database.ts'
import { BookError } from '../../lib/book/error.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { planImport } from '../../lib/book/import.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { openBookFile, wholeBook } from '../../lib/book/json.ts'
import { saveMap } from '../../lib/book/maps.ts'
import { addNote } from '../../lib/book/notes.ts'
import { closeNotices } from '../../lib/book/notice.ts'
import { readReview, reviewParts } from '../../lib/book/review-file.ts'
import { readSealed, type Item } from '../../lib/book/sealed.ts'
import { demoJob } from '../../lib/job/demo.ts'
import type { Row } from '../bench/part.ts'
import { context, fakeFill, fakeLine, fakeMap } from '../book/fake.ts'
import { known, mangled, resealed } from '../book/hostile.ts'
import { lineAt, lineNamed, turned } from '../book/tamper.ts'
import { generator } from '../random.ts'

async function text(parts: AsyncIterable<string>): Promise<string> {
  let whole = ''
  for await (const part of parts) whole += part
  return whole
}

async function files(): Promise<{ book: string; review: string }> {
  const job = await saveJob(demoJob())
  await saveMap(fakeMap())
  const about = { id: job.id, name: '14 Tannery Row' }
  for (const id of ['a', 'b', 'c']) {
    await startFill(fakeFill(id, { job: about }), context)
    await addFillLine(id, fakeLine('flow', { note: 'ünïcode ≤ 3 \u001f' }))
    await endFill(id)
  }
  await addNote({ kind: 'correction', job: about, of: 1, reason: 'Plans', text: '15790' }, '0.2.0')
  return { book: await text(wholeBook()), review: await text(reviewParts(job, '0.2.0')) }
}

type Read = (file: Blob) => Promise<unknown>
const asBook: Read = async (file) => planImport(await openBookFile(file))

async function bits(file: string, read: Read, random: () => number, samples: number) {
  const bytes = new TextEncoder().encode(file)
  let [seen, located] = [0, 0]
  for (let sample = 0; sample < samples; sample++) {
    const bit = Math.floor(random() * bytes.length * 8)
    const error: unknown = await read(new Blob([turned(bytes, bit)])).then(
      () => undefined,
      (found: unknown) => found,
    )
    if (!(error instanceof BookError)) continue
    seen++
    if (lineNamed(error) === lineAt(bytes, bit >> 3)) located++
  }
  return { seen, located }
}

export default async function book(): Promise<Row[]> {
  const seed = Number(process.env['SOAK_SEED'] ?? Date.now() % 1e9)
  const random = generator(seed)
  const made = await files()
  await closeDatabase()
  globalThis.indexedDB = new IDBFactory()
  const rows: Row[] = [{ what: 'seed (SOAK_SEED repeats a run)', value: seed, unit: '' }]
  for (const [name, file, read] of [
    ['book', made.book, asBook],
    ['review file', made.review, readReview],
  ] as const) {
    const { seen, located } = await bits(file, read, random, 1000)
    rows.push({ what: `${name}: turned bits seen of 1,000`, value: seen, unit: '', aim: 'all', met: seen === 1000 })
    rows.push({ what: `${name}: located`, value: located, unit: '', aim: 'all', met: located === 1000 })
  }

  const items: Item[] = []
  const kinds = ['head', 'job', 'device', 'map', 'entry', 'settings']
  for await (const { kind, value } of readSealed(new Blob([made.book]), kinds)) items.push({ kind, value })
  let [refused, planned, wrong] = [0, 0, 0]
  let longest = 0
  const given = known().map(([, file]) => file)
  for (let count = 0; count < 10_000; count++) {
    const file = given[count] ?? (count % 2 ? mangled(made.book, random) : await resealed(items, random))
    const start = performance.now()
    try {
      await asBook(new Blob([file]))
      planned++
    } catch (error) {
      if (error instanceof BookError && /^[A-Z].*\.$/s.test(error.message)) refused++
      else {
        wrong++
        console.error(error)
      }
    }
    longest = Math.max(longest, performance.now() - start)
  }
  const db = await database()
  let left = 0
  for (const store of ['jobs', 'maps', 'entries', 'devices', 'limits', 'blobs', 'single'] as const)
    left += await db.count(store)
  const ran = 'hacked' in globalThis || 'polluted' in {}
  closeNotices()
  return [
    ...rows,
    { what: 'hostile files refused in a sentence', value: refused, unit: '' },
    { what: 'hostile files still whole, so that a plan was shown', value: planned, unit: '' },
    { what: 'hostile files that ended otherwise', value: wrong, unit: '', aim: 'none', met: wrong === 0 },
    { what: 'records in the book afterwards', value: left, unit: '', aim: 'none', met: left === 0 },
    { what: 'anything executed', value: Number(ran), unit: '', aim: 'nothing', met: !ran },
    { what: 'longest file', value: longest, unit: 'ms' },
  ]
}
