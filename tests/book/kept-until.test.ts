/** Records by the day until which they are to be kept, and by the days of their tests. */
import { describe, expect, test } from 'vitest'
import { database } from '../../lib/book/database.ts'
import { addSealed, getHead } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { renewRows } from '../../lib/book/indexing.ts'
import { saveDevice } from '../../lib/book/devices.ts'
import { saveJob } from '../../lib/book/jobs.ts'
import { addNote } from '../../lib/book/notes.ts'
import { listRows, rowsKeptTo } from '../../lib/book/search.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { context, fakeDevice, fakeFill, fakeLine } from './fake.ts'
import { manyEntries } from './many.ts'
import './fresh.ts'

async function fill(id: string, keepUntil = ''): Promise<number> {
  await startFill(fakeFill(id), context)
  await addFillLine(id, fakeLine('flow'))
  const { number } = await endFill(id)
  if (keepUntil) await keep(number, keepUntil)
  return number
}

const keep = (of: number, keepUntil: string) =>
  addNote(
    {
      kind: 'follow-up',
      job: { id: 'job-1', name: '14 Tannery Row' },
      of,
      status: 'accepted',
      reason: '',
      confirmation: '',
      due: '',
      keepUntil,
      text: '',
    },
    '0.1.0',
  )

const tested = async (testedFrom: string, testedTo: string) => numbers(await listRows({ testedFrom, testedTo }))

const numbers = (rows: readonly { number: number }[]) => rows.map(({ number }) => number)

describe('records that are to be kept', () => {
  test('until a day or an earlier one are listed, the earliest first', async () => {
    const late = await fill('late', '2033-02-01')
    await fill('without')
    const early = await fill('early', '2027-03-01')
    const middle = await fill('middle', '2027-03-31')
    expect(numbers(await rowsKeptTo('2027-03-30'))).toEqual([early])
    expect(numbers(await rowsKeptTo('2027-03-31'))).toEqual([early, middle])
    expect(numbers(await rowsKeptTo('2040-01-01'))).toEqual([early, middle, late])
    expect(numbers(await listRows({ kept: true, order: 'kept shortest' }))).toEqual([early, middle, late])
    expect(numbers(await listRows({ keptTo: '2027-03-31', text: 'nowhere' }))).toEqual([])
  })

  test('count by the day that was noted last', async () => {
    const number = await fill('a', '2027-03-01')
    await keep(number, '2035-01-01')
    expect(await rowsKeptTo('2030-01-01')).toEqual([])
    expect(numbers(await rowsKeptTo('2036-01-01'))).toEqual([number])
  })

  test('are found in a book of several blocks, and where an earlier version made the words', async () => {
    const number = await fill('a', '2027-03-01')
    for await (const batch of manyEntries(2100, 2, await getHead())) await addSealed(batch)
    expect(numbers(await rowsKeptTo('2027-12-31'))).toEqual([number])
    const db = await database()
    await db.clear('words')
    await db.put('single', { rows: 2 }, 'form')
    await renewRows()
    expect(numbers(await rowsKeptTo('2027-12-31'))).toEqual([number])
  })
})

test('an entry is found by tester, company, device and the date of its test', async () => {
  const device = await saveDevice(fakeDevice({ name: 'Fan in the van', serial: '0417' }))
  const demo = demoJob()
  const job = await saveJob({
    ...demo,
    tester: { ...demo.tester, name: 'Ines Halvorsen', company: 'Bellwether Lane Testing' },
    tests: demo.tests.map((one) =>
      Object.assign(one, { date: '2026-03-11', sheet: { ...one.sheet, device: device.id } }),
    ),
  })
  const { basisOf } = await import('../../lib/report/basis.ts')
  await fill('other')
  await startFill(fakeFill('a', { job: { id: job.id, name: 'x' } }), {
    ...context,
    write: (of, devices) => basisOf(of, devices, '0.1.0'),
  })
  const { number } = await endFill('a')
  for (const text of ['halvorsen', 'bellwether lane', 'fan in the van', '0417', '2026-03-11'])
    expect({ text, found: numbers(await listRows({ text })) }).toEqual({ text, found: [number] })
  expect(await tested('2026-03-11', '2026-03-11')).toEqual([number])
  expect(await tested('2026-03-12', '')).toEqual([])
  expect(await tested('', '2026-03-10')).toEqual([])
  expect(await tested('2026-01-01', '2026-12-31')).toEqual([number])
})
