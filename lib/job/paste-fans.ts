/** A pasted table of several fans: the pressure, then of each fan its flow, or its pressure and its range. */
import { emptyFanReading, emptyPoint } from './empty.ts'
import { cut } from './paste-line.ts'
import { quote, readCell } from './read-cell.ts'
import type { TypedFan, TypedFanReading, TypedPoint } from './schema.ts'
import { say } from '../words/say.ts'

/** What people write where a fan was off or sealed. */
const OFF = /^(?:|[-–—x]|off|sealed|aus|zu|arr[eê]t[eé]?|apagado|n\/a)$/i

const isNumber = (text: string): boolean => !('fault' in readCell(text, '1'))

const cellsOf = (line: string): string[] => {
  const separator = ['\t', ';', '|'].find((one) => line.includes(one))
  return separator ? cut(line, separator) : line.trim().split(/[ \t]+/)
}

const MOST = 5000

export interface PastedFans {
  rows: TypedPoint[]
  /** What was not taken, a sentence each. */
  problems: string[]
}

/**
 * The rows of a pasted table in the order of the fans. A line that begins with no number is a heading; one column more than
 * the fans have, whole numbers that count up, numbers the lines.
 *
 * @param text of at most 10,000 lines
 */
export function readFansPaste(text: string, fans: readonly Pick<TypedFan, 'reading'>[]): PastedFans {
  const width = 1 + fans.reduce((sum, { reading }) => sum + (reading === 'device' ? 2 : 1), 0)
  const lines = text.split(/\r?\n/).map((line, at) => ({ number: at + 1, cells: cellsOf(line) }))
  const filled = lines.filter(({ cells }) => cells.some((cell) => cell !== ''))
  const rows = filled.filter(({ cells }) => isNumber(cells[0]!))
  const counted = rows.length > 0 && rows.every(({ cells }, at) => cells.length > width && cells[0] === String(at + 1))
  const found: PastedFans = { rows: [], problems: [] }
  for (const { number, cells } of rows) {
    const own = counted ? cells.slice(1) : cells
    const bad = own.slice(width).find((cell) => cell !== '')
    if (bad !== undefined) {
      found.problems.push(
        say`Line ${number}: ${own.length} columns, where the fans of this test have ${width}. Set up the fans as the table has them, and paste it again.`,
      )
      continue
    }
    const fault = place(own, fans, found.rows)
    if (fault) found.problems.push(say`Line ${number}: ${quote(fault)} is not a number.`)
    if (found.rows.length >= MOST) break
  }
  if (rows.length === 0) found.problems.push(say`No line begins with a number: nothing was pasted.`)
  return found
}

/** Adds a row; gives back the cell that is no number. */
function place(
  cells: readonly string[],
  fans: readonly Pick<TypedFan, 'reading'>[],
  rows: TypedPoint[],
): string | undefined {
  const [pressure = '', ...rest] = cells
  let at = 0
  const next = () => rest[at++] ?? ''
  const readings: TypedFanReading[] = []
  for (const { reading } of fans) {
    const value = next()
    const range = reading === 'device' ? next() : ''
    const off = OFF.test(value)
    if (!off && !isNumber(value)) return value
    const kept = off ? '' : value
    readings.push({
      ...emptyFanReading(),
      ...(reading === 'device' ? { devicePressure: kept, range: off && OFF.test(range) ? '' : range } : { flow: kept }),
    })
  }
  rows.push({ ...emptyPoint(), pressure, fans: readings })
  return undefined
}
