import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readPaste } from '../../lib/job/paste.ts'
import { readCell } from '../../lib/job/read-cell.ts'
import { readNumber } from '../../lib/units/read.ts'
import { effort } from './fake.ts'

/** Rows in one line each: pressure|flow|device pressure|range. */
const rows = (text: string) =>
  readPaste(text).rows.map(({ pressure, flow, devicePressure, range }) =>
    [pressure, flow, devicePressure, range].join('|'),
  )
const said = (text: string) => readPaste(text).problems.map(({ path, message }) => `${path} ${message}`)

const quick = (text: string) => {
  const { result, milliseconds } = effort(() => readPaste(text))
  expect(milliseconds).toBeLessThan(1000)
  return result
}

const tenth = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((number) => number / 10)

describe('a pasted block', () => {
  test('from a spreadsheet', () => {
    expect(rows('-51.3\t790\n-38.7\t658\r\n-26.2\t502\n')).toEqual(['-51.3|790||', '-38.7|658||', '-26.2|502||'])
    expect(rows('-51.3\t790\t120\tmiddle')).toEqual(['-51.3|790|120|middle'])
    expect(rows('-51.3\t\t48\tmiddle\n\t\t\tmiddle')).toEqual(['-51.3||48|middle'])
  })

  test('with semicolons, bars, commas, quotes and spaces', () => {
    expect(rows('-51,3;790;middle')).toEqual(['-51,3|790||middle'])
    expect(rows('| -51.3 | 790 | middle |')).toEqual(['-51.3|790||middle'])
    expect(rows('-51.3,790,middle')).toEqual(['-51.3|790||middle'])
    expect(rows('50,790')).toEqual(['50|790||'])
    expect(rows('"-51,3","1,020","middle"')).toEqual(['-51,3|1.020||middle'])
    expect(rows('-51.3   790   middle')).toEqual(['-51.3|790||middle'])
  })

  test('a letter in place of a digit is taken, to be told beside its cell', () => {
    expect(rows('-5l.9\t957')).toEqual(['-5l.9|957||'])
    expect(rows('-51.3 8OO middle')).toEqual(['-51.3|8OO||middle'])
    expect(readCell('-5l.9', 'Pa')).toEqual({ fault: 'text' })
  })

  test('a heading orders the columns', () => {
    expect(rows('Flow (cfm)\tHouse pressure (Pa)\n790\t-51.3')).toEqual(['-51.3|790||'])
    expect(rows('Flow,Pressure,Range\n790,-51.3,middle')).toEqual(['-51.3|790||middle'])
    expect(rows('Point  House pressure  Fan pressure  Range\n1  -51.3  48.2  middle')).toEqual(['-51.3||48.2|middle'])
    expect(rows('No;Range;Device pressure;Pressure\n1;middle;48;-51')).toEqual(['-51||48|middle'])
    expect(rows('House pressure Pa Flow cfm\n-51.3 790')).toEqual(['-51.3|790||'])
  })

  test('units and words beside the numbers order them too', () => {
    expect(rows('790 cfm at -51.3 Pa')).toEqual(['-51.3|790||'])
    expect(rows('-51.3Pa 790cfm range middle')).toEqual(['-51.3|790||middle'])
    expect(rows('Point 1: flow 790, pressure -51.3')).toEqual(['-51.3|790||'])
    expect(rows('-51.3 Pa, fan pressure 48.2 Pa, range middle')).toEqual(['-51.3||48.2|middle'])
  })

  test('the flow unit written in the block is told', () => {
    expect(readPaste('-51.3 Pa 790 cfm').flowUnit).toBe('cfm')
    expect(readPaste('Pressure\tFlow m³/h\n-51\t1300').flowUnit).toBe('m3/h')
    expect(readPaste('-51.3 790').flowUnit).toBe('')
    expect(readPaste('-51.3 790 cfm\n-40 400 L/s').flowUnit).toBe('')
  })

  test('minus signs of typography, line numbers and times', () => {
    expect(rows('−51.3 790')).toEqual(['−51.3|790||'])
    expect(rows('- 51.3 790')).toEqual(['-51.3|790||'])
    expect(rows('1 -51.3 790\n2 -40.1 600')).toEqual(['-51.3|790||', '-40.1|600||'])
    expect(rows('1) -51.3 790\n2) -40.1 600')).toEqual(['-51.3|790||', '-40.1|600||'])
    expect(rows('2026-02-11 14:03:20 -51.3 790')).toEqual(['-51.3|790||'])
  })

  test('decimal commas: a number that would read otherwise alone is written plainly', () => {
    expect(rows('-51,3\t1.250,5\n-38,725\t1.020')).toEqual(['-51,3|1250.5||', '-38.725|1020||'])
    expect(rows('-51.3\t1,250')).toEqual(['-51.3|1,250||'])
  })

  test('prose around the rows is passed over', () => {
    expect(rows('Hi Ines,\n\nthe readings:\n-51.3 790\n-38.7 658\n\nthanks')).toEqual(['-51.3|790||', '-38.7|658||'])
  })

  test('what cannot be taken is named by its line', () => {
    expect(said('Baseline -1.2\n-51.3 790')).toMatchInlineSnapshot(`
      [
        "line.1 Line 1: a baseline stands apart from the points. Type it under Baseline.",
      ]
    `)
    expect(said('51,3,790')).toMatchInlineSnapshot(`
      [
        "line.1 Line 1: the commas can be decimal marks or separators. Part the columns with tabs or semicolons and paste again.",
      ]
    `)
    expect(said('-51.3,1,250')).toMatchInlineSnapshot(`
      [
        "line.1 Line 1: the commas can be decimal marks or separators. Part the columns with tabs or semicolons and paste again.",
      ]
    `)
    expect(said('hello')).toMatchInlineSnapshot(`
      [
        "line.1 Line 1: no numbers were found. Paste lines that hold a pressure and a flow.",
      ]
    `)
    expect(said('On 3 occasions we saw some 20 Pa or so, and 44 more')).toMatchInlineSnapshot(`
      [
        "line.1 Line 1: no row of readings was found in it. Paste one reading a line.",
      ]
    `)
    expect(said('-51.3 790 120 B 7 8')).toMatchInlineSnapshot(`
      [
        "line.1 Line 1: “7” is one thing too many. Leave the pressure, the flow and the range in it.",
      ]
    `)
    expect(said('B 5')).toMatchInlineSnapshot(`
      [
        "line.1 Line 1: no row of readings was found in it. Paste one reading a line.",
      ]
    `)
  })

  test('a pressure without a flow is a row to be completed', () => {
    expect(rows('-51.3\n-40')).toEqual(['-51.3|||', '-40|||'])
  })

  test('nothing pasted is nothing', () => {
    expect(readPaste(' \n ')).toEqual({ rows: [], problems: [], more: '', flowUnit: '' })
  })
})

describe('a huge block', () => {
  test('5,000 rows are taken, and the rest counted', () => {
    const line = '-51.3\t790\n'
    expect(quick(line.repeat(5000))).toMatchObject({ more: '', problems: [] })
    const { rows: taken, more } = quick(line.repeat(5001))
    expect(taken).toHaveLength(5000)
    expect(more).toMatchInlineSnapshot(`"The first 5,000 rows were taken; 1 further line was left out."`)
    expect(quick(line.repeat(1_000_000)).more).toMatchInlineSnapshot(
      `"The first 5,000 rows were taken; 95,000 further lines were left out. Only the first 1,000,000 of 10,000,000 characters were looked at. Paste the rest in smaller blocks."`,
    )
  })

  test('10 MB of anything', () => {
    for (const text of ['a', '1', ',', ' ', '\t', '"', '\n', '-', '1,', '1 ', 'x 1\n', '1;2;']) {
      const result = quick(text.repeat(10_000_000 / text.length))
      expect(result.more).toContain('Only the first 1,000,000')
      expect(result.problems.length).toBeLessThanOrEqual(21)
    }
  }, 60_000)

  test('many lines that cannot be taken are said once', () => {
    expect(said('this line has 5 in it\n'.repeat(300)).slice(-2)).toMatchInlineSnapshot(`
      [
        "line.20 Line 20: no row of readings was found in it. Paste one reading a line.",
        "line.20 280 further lines were not taken either. Paste only the rows of readings.",
      ]
    `)
  })
})

describe('any rows', () => {
  const block = fc.array(fc.tuple(tenth(-90, -5), tenth(100, 9000), fc.constantFrom('wide', 'middle', 'narrow')), {
    minLength: 1,
    maxLength: 12,
  })
  const separator = fc.constantFrom('\t', ';', ' ', '   ', ' | ', ', ')

  test('come back as the numbers they were, whatever parts them and whatever the decimal mark', () => {
    fc.assert(
      fc.property(
        block,
        separator,
        fc.boolean(),
        fc.boolean(),
        fc.boolean(),
        (points, mark, comma, heading, typographic) => {
          const text = (value: number) => {
            const point = value.toFixed(1)
            const marked = comma ? point.replace('.', ',') : point
            return typographic ? marked.replace('-', '−') : marked
          }
          const lines = points.map(([pressure, flow, range]) => [text(flow), text(pressure), range].join(mark))
          const plain = points.map(([pressure, flow, range]) => [text(pressure), text(flow), range].join(mark))
          const pasted = readPaste(
            heading ? [['Flow', 'Pressure', 'Range'].join(mark), ...lines].join('\n') : plain.join('\n'),
          )
          expect(pasted.problems).toEqual([])
          expect(pasted.rows.map((row) => [readNumber(row.pressure), readNumber(row.flow), row.range])).toEqual(points)
        },
      ),
      { numRuns: 400 },
    )
  })

  test('a number under no reading makes no row of the words beside it', () => {
    expect(readPaste('Pa\n|\t0')).toMatchObject({ rows: [], problems: [{ path: 'line.2' }] })
  })

  test('whatever is pasted, nothing throws and every row holds a number', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789.,;\t \n-−PacfmB"|') })),
        (text) => {
          const { rows: found } = readPaste(text)
          for (const row of found) expect(row.pressure + row.flow + row.devicePressure).toMatch(/\d/)
        },
      ),
      { numRuns: 1000 },
    )
  })
})
