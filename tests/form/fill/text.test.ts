import { describe, expect, test } from 'vitest'
import { choose } from '../../../lib/form/choose.ts'
import { judge } from '../../../lib/form/fill/fill.ts'
import type { Item, Material, Quantity } from '../../../lib/form/material.ts'
import { sameness } from '../../../lib/form/same.ts'
import type { ControlKind, Source, Write } from '../../../lib/form/schema.ts'
import { sourceWords, textOf } from '../../../lib/form/fill/text.ts'

const wind = [
  { value: 'calm', label: 'Calm' },
  { value: 'light', label: 'Light' },
  { value: 'windy', label: 'Windy' },
]

const ach: Quantity = {
  kind: 'quantity',
  label: 'ACH50',
  group: 'after',
  value: 2.96,
  unit: '1/h',
  decimals: 2,
  limit: 3,
}

const items: Record<string, Item> = {
  'after/flow-50': { kind: 'quantity', label: 'CFM50', group: 'after', value: 1445.18, unit: 'cfm', decimals: 0 },
  'after/air-changes-50': ach,
  'after/above': { ...ach, value: 3.04 },
  'after/barely': { ...ach, value: 3.00004 },
  'after/date': { kind: 'date', label: 'date of test', group: 'after', iso: '2026-02-11' },
  'after/wind': { kind: 'choice', label: 'wind', group: 'after', value: 'light', options: wind },
  'job/permit': { kind: 'text', label: 'permit number', group: 'building', text: 'MB-2025-1183' },
  'job/notes': { kind: 'text', label: 'notes', group: 'building', text: 'one\ntwo' },
  'job/empty': { kind: 'text', label: 'builder', group: 'building', text: ' ' },
}
const material: Material = { job: { id: 'j', name: '14 Tannery Row' }, items }

const text = (item: string, kind: ControlKind = 'text', write: Write = {}, options: string[] = []) =>
  textOf({ from: 'item', item, write }, material, { kind, options })

describe('figures', () => {
  test('are written with the decimals, separators and mark that were asked for', () => {
    expect(text('after/flow-50')).toEqual({ text: '1445' })
    expect(text('after/flow-50', 'text', { decimals: 1, grouping: ',' })).toEqual({ text: '1,445.2' })
    expect(text('after/flow-50', 'text', { decimals: 2, grouping: '.', mark: ',' })).toEqual({ text: '1.445,18' })
  })

  test('a number control never gets a separator, nor another mark', () => {
    expect(text('after/flow-50', 'number', { decimals: 1, grouping: ',', mark: ',' })).toEqual({ text: '1445.2' })
  })

  test('are converted to the unit of the form', () => {
    // 1 cfm is 1.699011 m3/h (NIST SP 811, appendix B: cubic foot per minute).
    expect(text('after/flow-50', 'number', { unit: 'm3/h' })).toEqual({ text: String(Math.round(1445.18 * 1.699011)) })
    expect(text('after/flow-50', 'number', { unit: 'ft2' })).toEqual({
      refused: 'cfm cannot be written in ft2. Change the unit or the format.',
    })
  })

  test('rounding that flips the verdict is said', () => {
    expect(text('after/above', 'number', { decimals: 1 })).toEqual({
      text: '3.0',
      note: 'rounding flips the verdict: 3.040 unrounded is above the limit of 3 1/h',
    })
    expect(text('after/barely', 'number', { decimals: 2 })).toMatchObject({
      note: 'rounding flips the verdict: 3.00004 unrounded is above the limit of 3 1/h',
    })
    expect(text('after/air-changes-50', 'number', { decimals: 1 })).toEqual({
      text: '3.0',
      note: '2.960 unrounded, verdict the same',
    })
    expect(text('after/air-changes-50', 'number', { decimals: 2 })).toEqual({ text: '2.96' })
  })
})

describe('dates, choices, texts', () => {
  test('a date control gets an ISO date, a text control the order of the page', () => {
    expect(text('after/date', 'date', { date: 'MM/dd/yyyy' })).toEqual({ text: '2026-02-11' })
    expect(text('after/date', 'text', { date: 'MM/dd/yyyy' })).toEqual({ text: '02/11/2026' })
  })

  test('a date goes into three boxes, a month also by its name', () => {
    expect(text('after/date', 'number', { date: 'd' })).toEqual({ text: '11' })
    expect(text('after/date', 'select', { date: 'M' }, ['Month', 'January', 'February'])).toEqual({ text: 'February' })
    expect(text('after/date', 'select', { date: 'M' }, ['01', '02', '03'])).toEqual({ text: '02' })
    expect(text('after/date', 'select', { date: 'yyyy' }, ['2025', '2026'])).toEqual({ text: '2026' })
  })

  test('a choice becomes an option of the page', () => {
    expect(text('after/wind', 'select', {}, ['Select', 'Calm', 'Mild', 'Windy'])).toEqual({ text: 'Mild' })
    expect(text('after/wind', 'radio', { choices: { light: 'Breeze' } }, ['Breeze', 'Gale'])).toEqual({
      text: 'Breeze',
    })
    expect(text('after/wind', 'select', {}, ['Sunny', 'Rain'])).toEqual({
      refused: 'No option “Light” here: say which option stands for it.',
    })
    expect(text('after/wind', 'checkbox')).toMatchObject({ refused: expect.stringContaining('whether to tick') })
    expect(text('after/wind', 'checkbox', { choices: { light: 'checked' } })).toEqual({ text: 'checked' })
  })

  test('a text that is no number does not go into a number control', () => {
    expect(text('job/permit')).toEqual({ text: 'MB-2025-1183' })
    expect(text('job/permit', 'number')).toMatchObject({ refused: expect.stringContaining('not a plain number') })
    expect(text('job/notes')).toEqual({ text: 'one two' })
    expect(text('job/notes', 'textarea')).toEqual({ text: 'one\ntwo' })
  })

  test('what the job lacks is refused by name', () => {
    expect(text('job/empty')).toEqual({ refused: 'building: builder is empty in this job.' })
    expect(text('before/flow-50')).toEqual({
      refused: 'This job has no test “before”: add it, or bind something else.',
    })
    expect(text('after/flow-75')).toEqual({
      refused: 'This job has no “after: flow 75”: type what it needs, or bind something else.',
    })
    expect(text('job/postcode')).toEqual({
      refused: 'This job has no “building: postcode”: type what it needs, or bind something else.',
    })
  })

  test('words with figures between them', () => {
    const source: Source = {
      from: 'words',
      parts: [
        { text: 'Measured ' },
        { item: 'after/flow-50', write: { grouping: ',' } },
        { text: ' cfm on ' },
        { item: 'after/date', write: { date: 'd.M.yyyy' } },
      ],
    }
    expect(textOf(source, material, { kind: 'textarea', options: [] })).toEqual({
      text: 'Measured 1,445 cfm on 11.2.2026',
    })
    expect(sourceWords(source, material)).toBe('after: CFM50, after: date of test')
  })

  test('fixed text is read as a number where only a number fits', () => {
    expect(textOf({ from: 'text', text: '1,020' }, material, { kind: 'number', options: [] })).toEqual({ text: '1020' })
  })
})

describe('choose', () => {
  test('prefers the option to the letter, and never picks one of two', () => {
    expect(choose('Pass', [], ['pass', 'Pass'])).toBe('Pass')
    expect(choose('Pass', [], ['Passed', 'Compliant'])).toBeUndefined()
    expect(choose('Yes', [], ['Y', 'N'])).toBe('Y')
    expect(choose('Fail', ['fail'], ['Pass', 'Does not meet'])).toBe('Does not meet')
  })
})

describe('sameness', () => {
  test.each([
    ['1445', '1,445', 'same number'],
    ['1445', '1445.0', 'same number'],
    ['a', ' a ', 'same'],
    ['one\ntwo', 'one\r\ntwo', 'same'],
    ['0012', '12', 'different'],
    ['', '0', 'different'],
    ['754', '745', 'different'],
  ])('%j and %j: %s', (one, other, expected) => {
    expect([sameness(one, other), sameness(other, one)]).toEqual([expected, expected])
  })
})

describe('judge', () => {
  test.each([
    ['754', '', '754', '', 'entered', ''],
    ['754', '', '754', 'Too small.', 'entered', 'the page says: Too small.'],
    ['1445', '', '1,445', '', 'entered', 'the page words it “1,445”'],
    ['2.90', '', '2.9', '', 'entered', 'the page words it “2.9”'],
    ['2.96', '', '3.0', '', 'differs', 'the page changed it'],
    ['754', '', '', '', 'refused', 'the page emptied it'],
    ['754', '1', '1', '', 'refused', 'the page kept what was there'],
    ['754', '', '500', '', 'differs', 'the page changed it'],
    ['', '7', '', '', 'entered', ''],
  ] as const)('%j over %j reads back %j, “%s”: %s', (intended, before, readBack, says, outcome, note) => {
    expect(judge(intended, before, readBack, says, 'text', { language: 'en' })).toEqual({ outcome, note })
  })
})
