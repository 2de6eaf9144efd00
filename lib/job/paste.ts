/** Reads a block of readings pasted from a spreadsheet, an e-mail or a log. */
import { emptyPoint } from './empty.ts'
import { type Column, type Item, columnOf, columnsOf, cut, flowUnitOf, itemOf, tokens } from './paste-line.ts'
import type { Problem } from './problem.ts'
import type { TypedPoint } from './schema.ts'
import { say } from '../words/say.ts'

const MOST_ROWS = 5000
const MOST_LINES = 10_000
const MOST_CHARACTERS = 1_000_000
const MOST_IN_LINE = 500
const MOST_PROBLEMS = 20

const SEPARATORS = ['\t', ';', '|']
const FILLERS = new Set(['at', '@', '=', 'and', 'with', '-', '–', ':', '/', 'by', 'in', 'of'])

export interface Pasted {
  rows: TypedPoint[]
  /** Lines that held something and were not taken; `path` is `line.<number>`, counted from 1. */
  problems: Problem[]
  /** What was left out for its size, as a sentence; empty when nothing was. */
  more: string
  /** The flow unit written in the block, if it was the same throughout. */
  flowUnit: string
}

interface Line {
  number: number
  items: Item[]
  /** Whether the line was cut at separators, so that a place in it is a column. */
  cells: boolean
  text: string
}

/**
 * Rows of readings in `text`. Columns may be parted by tabs, semicolons, bars, commas or spaces; a heading line orders
 * them, else units and words beside the numbers do, else pressure, flow, device pressure is the order.
 *
 * @example readPaste('Flow\tPressure\n790\t-51.3').rows[0].pressure // '-51.3'
 */
export function readPaste(text: string): Pasted {
  const within = text.length > MOST_CHARACTERS ? text.slice(0, MOST_CHARACTERS) : text
  const raw = within.split(/\r\n|\r|\n/)
  // The last line of a text that was cut off may be half a line.
  if (within.length < text.length && raw.length > 1) raw.pop()
  const problems: Problem[] = []
  const rows: TypedPoint[] = []
  const separator = SEPARATORS.find((mark) => within.includes(mark))
  const quoted = separator === undefined && /^[ \t]*"|\n[ \t]*"|,[ \t]*"/.test(within)
  const lines = takeLines(raw, separator ?? (quoted ? ',' : undefined))
  const counted = lines.some((line) => line.items.some((item) => item.kind === 'number'))
  const indexed = startsWithIndex(lines)
  const points = /\d\.\d/.test(within)
  const units = new Set<string>()
  let heading: Column[] | undefined
  let refused = 0
  // The number of the first line that was not looked at.
  let end = lines.length === MOST_LINES ? (lines.at(-1)?.number ?? 0) + 1 : Infinity
  for (const line of lines) {
    if (rows.length === MOST_ROWS) {
      end = line.number
      break
    }
    const named = readHeading(line)
    if (named !== undefined) {
      for (const unit of headingUnits(line)) units.add(unit)
      if (heading === undefined || named.length > 1) heading = named
      continue
    }
    const problem = refuse(line, heading, points, indexed)
    const row = problem === undefined ? place(line, heading, indexed, units) : problem
    if (typeof row === 'string') {
      refused++
      if (problems.length < MOST_PROBLEMS) problems.push(notTaken(line.number, row))
    } else if (row !== undefined) rows.push(row)
  }
  const commas = decimalCommas(rows)
  if (commas) for (const row of rows) plain(row)
  if (!counted && problems.length === 0 && text.trim() !== '') {
    problems.push(notTaken(1, say`no numbers were found. Paste lines that hold a pressure and a flow.`))
  }
  const [only] = units
  return {
    rows,
    problems: few(problems, refused),
    more: more(rows.length, end === Infinity ? 0 : linesFrom(raw, end), text.length),
    flowUnit: units.size === 1 && only !== undefined ? only : '',
  }
}

/** The lines that hold something, as many as are looked at. */
function takeLines(raw: string[], separator: string | undefined): Line[] {
  const lines: Line[] = []
  for (const [at, line] of raw.entries()) {
    if (lines.length === MOST_LINES) break
    if (line === '' || !/[^\s;,|"]/.test(line)) continue
    lines.push(take(line, at + 1, separator))
  }
  return lines
}

const linesFrom = (raw: string[], first: number) => raw.slice(first - 1).filter((line) => /\S/.test(line)).length

function take(raw: string, number: number, separator: string | undefined): Line {
  const text = raw.trim()
  if (text.length > MOST_IN_LINE) {
    return { number, items: [{ kind: 'word', text: say`long`, unit: '' }], cells: false, text }
  }
  const cells = separator !== undefined && text.includes(separator)
  if (cells) return { number, items: cut(raw, separator).map((cell) => itemOf(cell)), cells, text }
  return { number, items: tokens(text), cells, text }
}

const notTaken = (line: number, why: string): Problem => ({
  path: `line.${line}`,
  code: 'not-taken',
  severity: 'bad',
  message: say`Line ${line}: ${why}`,
})

/** The columns of a line that holds no number and names at least one column. */
function readHeading(line: Line): Column[] | undefined {
  if (line.text.length > MOST_IN_LINE || line.items.some((item) => item.kind === 'number')) return undefined
  if (/baseline|zero.?flow/i.test(line.text)) return undefined
  if (line.cells) {
    const columns = line.items.map((item) => columnOf(item.text) ?? ('index' as const))
    return columns.some((column) => column !== 'index') ? columns : undefined
  }
  const wide = line.text.split(/\s{2,}|,/).filter((part) => part.trim() !== '')
  const columns = wide.length > 1 ? wide.map((part) => columnOf(part) ?? 'index') : columnsOf(line.text.split(/\s+/))
  const named = new Set(columns.filter((column) => column !== 'index'))
  return named.size > 1 || (named.size === 1 && line.text.split(/\s+/).length <= 3) ? columns : undefined
}

function headingUnits(line: Line): string[] {
  return line.text.split(/[\s;|,]+/).flatMap((word) => flowUnitOf(word) ?? [])
}

/** Whether every line of numbers starts with 1, 2, 3, … before at least two more numbers. */
function startsWithIndex(lines: Line[]): boolean {
  let next = 0
  for (const line of lines) {
    const numbers = line.items.filter((item) => item.kind === 'number')
    if (numbers.length === 0) continue
    const [first] = numbers
    if (numbers.length < 3 || first === undefined || first.unit !== '' || first.column !== undefined) return false
    if (first.text !== String(next + 1)) return false
    next++
  }
  return next > 1
}

/** Why a line cannot be a row of readings, in words that follow its number. */
function refuse(line: Line, heading: Column[] | undefined, points: boolean, indexed: boolean): string | undefined {
  if (line.text.length > MOST_IN_LINE) {
    return say`${line.text.length.toLocaleString('en-US')} characters are too long for a row of readings. Paste one reading a line.`
  }
  const numbers = line.items.filter((item) => item.kind === 'number')
  if (/baseline|zero.?flow/i.test(line.text) && numbers.length > 0) {
    return say`a baseline stands apart from the points. Type it under Baseline.`
  }
  const commasOnly = !line.cells && /^[^\s,]+(,[^\s,]+)+$/.test(line.text) && numbers.length > 2
  if (!commasOnly || heading?.length === line.items.length || indexed) return undefined
  const grouped = numbers.some(
    (item, at) => /^[-+]?\d{1,2}$/.test(item.text) && /^\d{3}$/.test(numbers[at + 1]?.text ?? ''),
  )
  if (points && !grouped) return undefined
  return say`the commas can be decimal marks or separators. Part the columns with tabs or semicolons and paste again.`
}

/** The row a line stands for; nothing for prose without numbers; a string says why the line was not taken. */
function place(
  line: Line,
  heading: Column[] | undefined,
  indexed: boolean,
  units: Set<string>,
): TypedPoint | string | undefined {
  const numbers = line.items.filter((item) => item.kind === 'number')
  if (numbers.length === 0) return undefined
  const row = emptyPoint()
  const strange: string[] = []
  let prose = 0
  let gap = false
  const byHeading = heading !== undefined && (line.cells || line.items.length <= heading.length)
  let seen = 0
  let skip = indexed && !byHeading
  for (const [at, item] of line.items.entries()) {
    // Without a heading an empty cell between the numbers is an empty flow: pressure, nothing, device pressure.
    if (item.kind === 'blank' && !byHeading && seen === 1) gap = true
    if (item.kind === 'blank' || item.kind === 'time') continue
    if (item.kind === 'number' && skip) {
      skip = false
      continue
    }
    const column = item.column ?? (byHeading ? (heading[at] ?? 'index') : free(item, row, seen, gap))
    if (item.kind === 'number') seen++
    if (item.column === 'flow' && item.unit !== '') units.add(item.unit)
    if (column === 'index') {
      const harmless = byHeading || (item.kind === 'word' && (seen === 0 || FILLERS.has(item.text.toLowerCase())))
      if (!harmless) strange.push(item.text)
      else if (item.kind === 'word' && !FILLERS.has(item.text.toLowerCase())) prose++
    } else if (row[column] === '') row[column] = item.text
    else strange.push(item.text)
  }
  if (!line.cells && (strange.length > 2 || prose > 2 || (prose > 0 && numbers.length === 1)))
    return say`no row of readings was found in it. Paste one reading a line.`
  // Under a heading a word such as “n/a” is kept for its cell to tell of, beside a number.
  if (!/\d/.test(row.pressure + row.flow + row.devicePressure)) return say`it names no pressure and no flow.`
  if (strange.length > 0 && (row.pressure === '' || (row.flow === '' && row.devicePressure === ''))) {
    return say`no pressure and flow were found in it. Paste one reading a line, the pressure first.`
  }
  if (strange.length > 0)
    return say`“${strange[0]?.slice(0, 20) ?? ''}” is one thing too many. Leave the pressure, the flow and the range in it.`
  return row
}

/** Column of an item that no heading and no word beside it names. */
function free(item: Item, row: TypedPoint, seen: number, gap: boolean): Column {
  if (item.kind === 'word') {
    if (seen === 0 || FILLERS.has(item.text.toLowerCase()) || row.range !== '') return 'index'
    return item.text.length <= 12 ? 'range' : 'index'
  }
  if (row.pressure === '') return 'pressure'
  if (item.unit === 'Pa') return 'devicePressure'
  if (row.flow === '' && !gap) return 'flow'
  // A device pressure of a single digit is below what any range can read; it is the number of a range.
  if (/^\d$/.test(item.text) && row.range === '') return 'range'
  return row.devicePressure === '' ? 'devicePressure' : 'index'
}

/** Whether some number shows that commas are decimal marks: a comma that is not followed by three digits. */
function decimalCommas(rows: TypedPoint[]): boolean {
  const cells = rows.flatMap((row) => [row.pressure, row.flow, row.devicePressure])
  return (
    cells.some((cell) => /^[^,.]*,(?:\d{1,2}|\d{4,})$/.test(cell)) && !cells.some((cell) => /\.\d{1,2}$/.test(cell))
  )
}

/** Rewrites numbers that would read otherwise alone: `51,325` and `1.250` in a block of decimal commas. */
function plain(row: TypedPoint): void {
  for (const field of ['pressure', 'flow', 'devicePressure'] as const) {
    const cell = row[field]
    if (/^[-+\u2212\u2013]?\d{1,3},\d{3}$/.test(cell)) row[field] = cell.replace(',', '.')
    else if (/^[-+\u2212\u2013]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$/.test(cell))
      row[field] = cell.replaceAll('.', '').replace(',', '.')
  }
}

/** The first problems, and one that counts the others. */
function few(problems: Problem[], refused: number): Problem[] {
  const rest = refused - problems.length
  const last = problems.at(-1)
  if (rest <= 0 || last === undefined) return problems
  const message =
    rest === 1
      ? say`One further line was not taken either. Paste only the rows of readings.`
      : say`${count(rest)} further lines were not taken either. Paste only the rows of readings.`
  return [...problems, { ...last, message }]
}

const count = (number: number) => number.toLocaleString('en-US')

function more(rows: number, left: number, length: number): string {
  const parts: string[] = []
  if (left > 0) {
    const lines = left === 1 ? say`1 further line was left out.` : say`${count(left)} further lines were left out.`
    const taken =
      rows === MOST_ROWS ? say`${count(rows)} rows were taken` : say`${count(MOST_LINES)} lines were looked at`
    parts.push(say`The first ${taken}; ${lines}`)
  }
  if (length > MOST_CHARACTERS) {
    const looked = say`Only the first ${count(MOST_CHARACTERS)} of ${count(length)} characters were looked at.`
    parts.push(say`${looked} Paste the rest in smaller blocks.`)
  }
  return parts.join(' ')
}
