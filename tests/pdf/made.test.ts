/** A form by another producer, ReportLab: named, filled, and read by qpdf and poppler. `made/form-q.py` wrote it. */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { open, save } from './opened.ts'
import { faults, valuesIn, wordsIn } from './outside.ts'

const bytes = new Uint8Array(readFileSync(new URL('./made/form-q.pdf', import.meta.url)))

test('its fields are called as a person would call them', async () => {
  const { called, fields } = await open(bytes)
  expect(Object.fromEntries([...called].map(([name, { name: said }]) => [name, said]))).toEqual({
    q1: 'Street address',
    q2: 'Permit number',
    q3: 'Floor area, ft2',
    q4: 'Kind of test',
    q5: 'Result',
    q6: 'House has an attached garage',
  })
  expect(called.get('q5')?.options).toEqual(['Pass', 'Fail'])
  expect(new Set([...called.values()].map(({ section }) => section))).toEqual(new Set(['Part A. Building']))
  expect(fields.map(({ kind }) => kind)).toEqual(['text', 'text', 'text', 'choice', 'radio', 'tick'])
})

test('what is filled in is read back by three readers', async () => {
  const wanted = { q1: '14 Tannery Row', q2: 'MB-2025-1183', q3: '1860', q4: 'Rough-in', q5: 'v2', q6: 'Yes' }
  const saved = await save(await open(bytes), new Map(Object.entries(wanted)))
  expect(saved.fields.map(({ name, held, drawn }) => [name, held, drawn])).toEqual(
    Object.entries(wanted).map(([name, text]) => [name, text, '']),
  )
  expect(faults(saved.bytes)).toBe('')
  expect(Object.fromEntries(valuesIn(saved.bytes))).toEqual({ ...wanted, q5: '/v2', q6: '/Yes' })
  const words = wordsIn(saved.bytes)
  for (const text of ['14 Tannery Row', 'MB-2025-1183', '1860', 'Rough-in']) expect(words).toContain(text)
})
