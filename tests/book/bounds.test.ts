import { expect, test } from 'vitest'
import { bounds } from '../../lib/bounds.ts'
import { answer } from '../../lib/extension/answer.ts'
import { check } from '../../lib/book/check.ts'
import { countEntries, entryOfFill, getEntry } from '../../lib/book/entries.ts'
import { addFillLine, endFill, startFill } from '../../lib/book/fills.ts'
import { planImport } from '../../lib/book/import.ts'
import { openBookFile, wholeBook } from '../../lib/book/json.ts'
import { noteLate } from '../../lib/book/late.ts'
import { keptLine } from '../../lib/form/fill/kept-line.ts'
import { receiptLineSchema } from '../../lib/form/schema.ts'
import { context, fakeFill, fakeLine } from './fake.ts'
import './fresh.ts'

const file = async (): Promise<Blob> => {
  const parts: string[] = []
  for await (const part of wholeBook()) parts.push(part)
  return new Blob(parts)
}

test('every record and attachment that may be kept fits into a line of a book file', () => {
  const seal = 200
  expect(bounds.record + seal).toBeLessThan(bounds.line)
  expect(Math.ceil(bounds.attachment / 3) * 4 + seal).toBeLessThan(bounds.line)
})

test('controls that held millions of characters make an entry that is taken in again from its file', async () => {
  const held = '\u0001'.repeat(2_800_000)
  await startFill(fakeFill('long'), context)
  for (const binding of ['a', 'b', 'c', 'd'])
    await addFillLine('long', { ...fakeLine('flow'), binding, before: held, readBack: held })
  const entry = await endFill('long')
  expect(JSON.stringify(entry).length).toBeLessThanOrEqual(bounds.record)
  expect(entry.lines[0]?.note).toMatch(/held 2800000 characters, of which the book keeps the first 50000/)
  const { entries } = await planImport(await openBookFile(await file()))
  expect(entries).toMatchObject({ same: entry.number, refused: '' })
})

test('many long lines are cut further, until their entry fits', async () => {
  await startFill(fakeFill('many'), context)
  const readBack = '\u0001'.repeat(bounds.value)
  for (let at = 0; at < 90; at++) await addFillLine('many', { ...fakeLine('flow'), binding: `b${at}`, readBack })
  const entry = await endFill('many')
  expect(entry.lines.length).toBe(90)
  expect(JSON.stringify(entry).length).toBeLessThanOrEqual(bounds.record)
  expect(entry.lines[0]?.readBack.length).toBeLessThan(bounds.value)
})

test('what is longer than a record is refused in a sentence, before it is written', () => {
  const line = fakeLine('flow', { readBack: 'x'.repeat(bounds.record) })
  expect(() => check(receiptLineSchema, line, 'The line')).toThrow(/The line was not kept: it is 25 MB long/)
})

const sender = { id: 'me', tab: { id: 7 } }
const surroundings = { self: 'me', engine: '1', openBook: async () => {} }

test('a message beyond what a fill needs is refused in a sentence', async () => {
  const fill = fakeFill('big')
  const planned = Array.from({ length: bounds.lines + 1 }, () => fill.planned[0]!)
  const many = await answer({ type: 'fill-started', fill: { ...fill, planned } }, sender, surroundings)
  expect(many).toMatchObject({ ok: false, message: expect.stringMatching(/the book takes 2000 of one page/) })
  const page = { ...fill.page, title: 'x'.repeat(bounds.message) }
  const long = await answer({ type: 'fill-started', fill: { ...fill, page } }, sender, surroundings)
  expect(long).toMatchObject({ ok: false, message: expect.stringMatching(/MB long/) })
})

test('a line as the book keeps it says what was cut, and is left alone where nothing was', () => {
  const line = fakeLine('flow')
  expect(keptLine(line)).toEqual(line)
  const long = keptLine({ ...line, before: `${'x'.repeat(bounds.value)}yz` })
  expect(long.before.length).toBe(bounds.value)
  expect(long.note).toContain('held 50002 characters')
})

test('lines that come late join their fill while it is open, and later get an entry of their own, once', async () => {
  await startFill(fakeFill('late'), context)
  const whole = await noteLate(fakeFill('late'), [fakeLine('flow')], context)
  expect(whole).toMatchObject({ id: 'late', lines: [fakeLine('flow')] })
  const changed = { ...fakeLine('flow'), outcome: 'differs' as const, readBack: '169', note: 'changed' }
  const first = await entryOfFill('late')
  const entry = await noteLate(fakeFill('late'), [changed], context)
  expect(entry).toMatchObject({ id: 'late/2', lines: [changed], complete: true })
  expect(entry.number).toBe(first!.number + 1)
  const count = await countEntries()
  expect((await noteLate(fakeFill('late'), [changed], context)).number).toBe(entry.number)
  expect(await countEntries()).toBe(count)
  expect(await getEntry(first!.number)).toEqual(first)
})
