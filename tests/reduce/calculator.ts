/** Follows a working as a reader with a hand calculator does: takes the printed numbers, keys in the printed formula. */
import type { Step } from '../../lib/reduce/report.ts'

type Known = Map<string, number>

/** `Q50 = 433 cfm, n = 0.65` as names and numbers. */
export function namedIn(text: string): Known {
  const found: Known = new Map()
  for (const part of text.split(/[,;] /)) {
    const [, name, value] = /^(?:\d+: )?(.+) = (-?[\d.]+(?:e[+-]?\d+)?)(?: .*)?$/.exec(part) ?? []
    if (name !== undefined && value !== undefined) found.set(name, Number(value))
  }
  return found
}

/** The formula's right side, up to the first comma or semicolon outside brackets. */
function rightSide(formula: string): string {
  let depth = 0
  let end = formula.length
  for (const [at, letter] of [...formula].entries()) {
    if (letter === '(') depth++
    if (letter === ')') depth--
    if (depth === 0 && (letter === ',' || letter === ';') && at < end) end = at
  }
  const whole = formula.slice(0, end)
  return whole.includes(' = ') ? whole.slice(whole.indexOf(' = ') + 3) : whole
}

const signs: Record<string, string> = { '×': '*', '−': '-', '^': '**', '²': '**2', '√': 'Math.sqrt' }

/** The formula in figures; undefined when it names something that no number is known of. */
function inFigures(formula: string, known: Known): string | undefined {
  const names = [...known.keys()].toSorted((a, b) => b.length - a.length)
  let rest = rightSide(formula).replaceAll(/\|([^|]+)\|/g, 'abs($1)')
  let written = ''
  while (rest !== '') {
    const word = /^(ln|abs)(?=\()/.exec(rest)
    const number = /^\d+(\.\d+)?/.exec(rest)
    const name = names.find((one) => rest.startsWith(one))
    if (word) {
      written += word[1] === 'ln' ? 'Math.log' : 'Math.abs'
      rest = rest.slice(word[0].length)
    } else if (name !== undefined) {
      written += `(${known.get(name)})`
      rest = rest.slice(name.length)
    } else if (number) {
      written += number[0]
      rest = rest.slice(number[0].length)
    } else if (/^[ ()+/×−^²√]/.test(rest)) {
      written += signs[rest[0]!] ?? rest[0]!
      rest = rest.slice(1)
    } else return undefined
  }
  return written
}

export interface Keyed {
  step: string
  /** What the calculator shows, and what the step prints. */
  shown: number
  printed: number
}

/** `1: a; 2: b` as its parts, else the one text. */
const lines = (text: string): string[] =>
  text.startsWith('1: ') ? text.split('; ').map((one) => one.replace(/^\d+: /, '')) : [text]

/** Every step that the calculator can follow; the names of the others are put into `left`. */
export function follow(working: readonly Step[], left: string[]): Keyed[] {
  const before: Known = new Map()
  return working.flatMap(({ step, formula, values, result }) => {
    const results = lines(result)
    const rows = lines(values)
    const keyed = results.map((line, index): Keyed | undefined => {
      const known = new Map([...before, ...namedIn(rows[index] ?? values)])
      const figures = inFigures(formula, known)
      const printed = Number.parseFloat(/^.+ = (.+)$/.exec(line)?.[1] ?? line)
      if (figures === undefined || Number.isNaN(printed)) return undefined
      // oxlint-disable-next-line typescript/no-implied-eval -- keys in numbers and signs only, see inFigures
      const shown = Number(new Function(`return ${figures}`)())
      return { step, shown: line.includes('%') && !formula.startsWith('100 ×') ? 100 * shown : shown, printed }
    })
    for (const [name, value] of namedIn(result)) before.set(name, value)
    const followed = keyed.filter((one) => one !== undefined)
    if (followed.length < keyed.length) left.push(step)
    return followed
  })
}
