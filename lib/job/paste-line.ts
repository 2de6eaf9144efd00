/** One line of a pasted block, taken apart into numbers, with the unit stuck to them, and words. */
import { MISREAD } from './read-cell.ts'

export type Column = 'pressure' | 'flow' | 'devicePressure' | 'range' | 'index'

export interface Item {
  kind: 'number' | 'word' | 'time' | 'blank'
  text: string
  /** The unit that stood behind the number, as written. */
  unit: string
  /** The column that the unit or a word before it names. */
  column?: Column
}

/** A sign may be a minus of typography (U+2212) or a dash; grouping may be a no-break space. */
const NUMBER = /^[-+\u2212\u2013]?(?:\d[\d.,'\u2019\u00a0\u202f]*|[.,]\d+)(?:[eE][-+]?\d{1,3})?$/
const NUMBER_THEN_UNIT = /^([-+\u2212\u2013]?[\d.,'\u2019\u00a0\u202f]*\d)([^\d.,\s][^\s]*)$/
const TIME =
  /^(?:\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?|\d{4}-\d{2}-\d{2}(?:T\S*)?|\d{1,2}[/.]\d{1,2}[/.]\d{2,4}|[ap]\.?m\.?)$/i

const FLOW_UNITS: Record<string, string> = {
  cfm: 'cfm',
  'ft3/min': 'cfm',
  'm3/h': 'm3/h',
  'm3/hr': 'm3/h',
  cmh: 'm3/h',
  'l/s': 'L/s',
}

/** Plain spelling of a unit as written: `M³/h)` is `m3/h`. */
const plainUnit = (text: string) =>
  text
    .toLowerCase()
    .replaceAll('³', '3')
    .replaceAll(/[()[\]^,;:]/g, '')
    .replace(/\.$/, '')

/** The flow unit that `text` writes, if it writes one. */
export const flowUnitOf = (text: string): string | undefined => FLOW_UNITS[plainUnit(text)]

const isPascal = (text: string): boolean => plainUnit(text) === 'pa'

const PRESSURE_WORDS = new Set(['pressure', 'pressures', 'house', 'building', 'enclosure', 'dp', 'δp', '∆p', 'pa'])
const FLOW_WORDS = new Set(['flow', 'flows', 'leakage', 'airflow'])
const DEVICE_WORDS = new Set(['device', 'fan', 'orifice', 'nozzle'])
const RANGE_WORDS = new Set(['range', 'ring', 'opening', 'setting'])
const INDEX_WORDS = new Set(['point', 'points', 'reading', 'no', 'nr', 'n', '#', 'id'])

const plainWord = (text: string) =>
  text
    .toLowerCase()
    .replaceAll(/[()[\]:=.,]/g, '')
    .trim()

/** The column that a heading of one or more words names. */
export function columnOf(heading: string): Column | undefined {
  const words = heading.split(/[\s_]+/).filter((word) => word !== '')
  const has = (set: Set<string>) => words.some((word) => set.has(plainWord(word)))
  if (has(RANGE_WORDS)) return 'range'
  if (has(FLOW_WORDS)) return 'flow'
  if (has(DEVICE_WORDS)) return 'devicePressure'
  if (has(PRESSURE_WORDS)) return 'pressure'
  if (words.some((word) => flowUnitOf(word) !== undefined)) return 'flow'
  return has(INDEX_WORDS) ? 'index' : undefined
}

/** The columns named by single words in a row: `house pressure Pa flow cfm` names two. */
export function columnsOf(words: string[]): Column[] {
  const columns: Column[] = []
  let device = false
  for (const word of words) {
    let column = columnOf(word)
    if (column === 'devicePressure') device = true
    else if (column === 'flow' && device && columns.at(-1) === 'devicePressure') columns.pop()
    if (column === 'pressure' && device) column = 'devicePressure'
    if (column === undefined) continue
    if (columns.at(-1) !== column) columns.push(column)
    if (column !== 'devicePressure') device = false
  }
  return columns
}

/** Cells between separators; a separator within double quotes belongs to its cell. */
export function cut(line: string, separator: string): string[] {
  if (!line.includes('"')) return line.split(separator).map((cell) => cell.trim())
  const cells: string[] = []
  let cell = ''
  let quoted = false
  for (const character of line) {
    if (character === '"') quoted = !quoted
    else if (character === separator && !quoted) {
      cells.push(cell.trim())
      cell = ''
    } else cell += character
  }
  cells.push(cell.trim())
  return cells
}

/** What a single cell or token is. */
export function itemOf(text: string): Item {
  if (text === '') return { kind: 'blank', text, unit: '' }
  if (TIME.test(text)) return { kind: 'time', text, unit: '' }
  // A letter in place of a digit is told beside the cell, where it can be corrected; the line is not passed over.
  if (NUMBER.test(text) || MISREAD.test(text)) return { kind: 'number', text, unit: '' }
  const glued = NUMBER_THEN_UNIT.exec(text.replace(/^([^\s]*\d)\s+(\S)/, '$1$2'))
  const [, number = '', unit = ''] = glued ?? []
  if (glued && (isPascal(unit) || flowUnitOf(unit) !== undefined)) return withUnit(number, unit)
  return { kind: 'word', text, unit: '' }
}

function withUnit(number: string, unit: string): Item {
  const flow = flowUnitOf(unit)
  const item: Item = { kind: 'number', text: number, unit: flow ?? (isPascal(unit) ? 'Pa' : unit) }
  return flow === undefined ? item : { ...item, column: 'flow' }
}

/** Whether `token` holds two numbers with a comma between them, such as `-51.3,790`. */
function pair(token: string): [string, string] | undefined {
  const [left = '', right = '', ...rest] = token.split(',')
  if (rest.length > 0 || !NUMBER.test(left) || !NUMBER.test(right)) return undefined
  return [left, right]
}

/** More than forty pieces. */
const PIECES = /^(?:[^ \t,]*[ \t,]+(?![ \t,])){40}/

/** The items of a line without cell separators: tokens, units joined to their numbers, labels to what follows them. */
export function tokens(line: string): Item[] {
  // A line without a digit, or with more pieces than a row can have, holds no readings.
  if (!/\d/.test(line) || PIECES.test(line)) return line === '' ? [] : [{ kind: 'word', text: line, unit: '' }]
  const parts = line
    .replaceAll(/(^|[ \t,;])([-+\u2212\u2013]) +(?=\d)/g, '$1$2')
    .split(/[ \t]+/)
    .flatMap((part) => split(part.replace(/^[,;]+/, '').replace(/(?<![,;])[,;]+$/, '')))
    .filter((part) => part !== '')
  let items: Item[] = []
  let label: Column | undefined
  for (const [at, part] of parts.entries()) {
    const last = items.at(-1)
    if (last?.kind === 'number' && last.unit === '' && (isPascal(part) || flowUnitOf(part) !== undefined)) {
      items[items.length - 1] = { ...last, ...withUnit(last.text, part) }
      continue
    }
    // `1:`, `1)`, `#1` and `1.` number the line.
    if (at === 0 && parts.length > 2 && /^(?:#\d{1,4}[:.)]?|\d{1,4}[:.)])$/.test(part)) continue
    const item = itemOf(part)
    const named = item.kind === 'word' && !/\d/.test(part) ? columnOf(part) : undefined
    if (named !== undefined) {
      label = label === 'devicePressure' && named === 'pressure' ? label : named
      continue
    }
    if (label !== undefined && (item.kind === 'number' || item.kind === 'word')) {
      if (label !== 'index') items.push({ ...item, column: item.column ?? label })
      label = undefined
      continue
    }
    items.push(item)
  }
  if (items.filter((item) => item.kind === 'number').length === 1) {
    items = items.flatMap((item) => {
      const halves = item.kind === 'number' && item.column === undefined ? pair(item.text) : undefined
      return halves ? halves.map((half) => itemOf(half)) : [item]
    })
  }
  return items
}

/** A token with a point before a comma (`-51.3,790`), a sign after one or more than two parts is a list. */
function split(part: string): string[] {
  if (!part.includes(',') || /^[-+\u2212\u2013]?\d{1,3}(?:\.\d{3})+,\d+$/.test(part)) return [part]
  const cells = part.split(',')
  const grouped = /^[-+\u2212\u2013]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(part)
  const signed = cells.slice(1).some((cell) => /^[-+\u2212\u2013]/.test(cell))
  const list =
    cells.length > 2 || signed || cells.some((cell) => !NUMBER.test(cell)) || cells[0]?.includes('.') === true
  return list && !grouped ? cells : [part]
}
