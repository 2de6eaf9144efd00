/** No cell of a table runs as a formula, whatever a page or a file put into it; numbers stay numbers. */
import { parse } from 'papaparse'
import { describe, expect, test } from 'vitest'
import { csvCell, csvRows } from '../lib/csv.ts'
import { figuresCsv } from '../lib/form/fill/file.ts'

// Signs by OWASP, CSV Injection (from memory); wide forms: Unicode, Halfwidth and Fullwidth Forms.
test.each([
  '=1+1',
  '+1+1',
  '-1+cmd|’ /C calc’!A0',
  '@SUM(A1)',
  '＝1+1',
  '＋1+1',
  '－1+1',
  '＠SUM(A1)',
  '\n=1+1',
  '\r\n=1+1',
  '\t=1+1',
  ' =1+1',
  '\u00a0=1+1',
  '\u200b=1+1',
  '\ufeff=1+1',
  '\u0000=1+1',
  '--1',
  '-',
  '+49 30 1234',
  '+44',
])('%j is kept a text', (text) => {
  const [[cell = '']] = parse<string[]>(csvRows([[text]])).data as [string[]]
  expect(cell.trimStart().replace(/^[\p{C}\s]+/u, '')).toMatch(/^'/)
  expect(cell.replace("'", '')).toBe(text)
})

test.each(['-61.4', '-0,5', '.5', '1e-3', '12 %', '754', ''])('%j stays as it is', (text) => {
  expect(csvCell(text)).toBe(/[",;]/.test(text) ? `"${text}"` : text)
})

test('negative numbers are numbers for a spreadsheet', () => {
  expect(csvRows([[-61.4, '-61.4']])).toBe('-61.4,-61.4\r\n')
})

describe('a spreadsheet that parts cells by semicolons', () => {
  test.each(['a;=1+1', 'a; =1+1', 'a;\t@SUM(A1)', 'a\n=1+1', '12; -1+cmd|’!A0', 'a;＝1+1'])(
    'runs no piece of %j',
    (text) => {
      const csv = csvRows([['before', text, 'after']])
      expect(csv).toContain('"')
      for (const row of parse<string[]>(csv, { delimiter: ';' }).data)
        for (const cell of row)
          expect(cell.replace(/^[\s\p{C}"]+/u, '').normalize('NFKC')).not.toMatch(/^(?:[=@]|[+-](?!\d+$))/)
    },
  )

  test('keeps the readings of a baseline', () => {
    expect(csvCell('-1.1; -0.9')).toBe('"-1.1; -0.9"')
  })
})

test('any rows come back as they were, but for apostrophes', () => {
  const rows = [
    ['a "quoted" text', 'two\r\nlines', ' blank ', 'x,y'],
    ['', '1', 'ünïcode ≤ 3', "it's"],
  ]
  expect(parse<string[]>(csvRows(rows), { skipEmptyLines: true }).data).toEqual(rows)
})

const text = (value: string) => ({ kind: 'text' as const, label: 'note', group: '', text: value })

test('the table that goes into a form is written by the same writer', () => {
  const material = { job: { id: 'j', name: 'x' }, items: { a: text('＝1+1'), b: text('-1+cmd|x'), c: text('\n=2') } }
  expect(
    parse<string[]>(figuresCsv(material), { skipEmptyLines: true })
      .data.slice(1)
      .map(([, , value]) => value),
  ).toEqual(["'＝1+1", "'-1+cmd|x", "'\n=2"])
})
