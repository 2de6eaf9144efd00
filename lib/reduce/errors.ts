/** What is wrong with a sheet, as data: one issue for each cell that stands in the way. */

export type IssueCode =
  | 'invalid'
  | 'both'
  | 'too few'
  | 'too many'
  | 'not positive'
  | 'out of range'
  | 'mixed signs'
  | 'same pressure'
  | 'baseline too large'
  | 'unknown range'
  | 'no line'

export interface SheetIssue {
  /** Keys from the sheet down to the cell: `['points', 2, 'flow']`. */
  path: (string | number)[]
  code: IssueCode
  /** What is wrong and what to do, one sentence. */
  message: string
}

export class SheetError extends Error {
  override name = 'SheetError'
  readonly issues: SheetIssue[]

  constructor(issues: SheetIssue[]) {
    super(issues.map(({ message }) => message).join('\n'))
    this.issues = issues
  }
}

const words: Record<string, string> = {
  flowPercent: 'flow uncertainty',
  pressurePercent: 'pressure uncertainty',
  volumePercent: 'volume uncertainty',
}

function name(key: string | number): string {
  const text = String(key)
  return words[text] ?? text.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}

/**
 * The name of a cell as a message uses it.
 *
 * @example cellName(['points', 2, 'devicePressure']) // 'point 3, device pressure'
 */
export function cellName(path: readonly (string | number)[]): string {
  if (path.length === 0) return 'the sheet'
  const [first = '', second, ...rest] = path
  if (first === 'points' && typeof second === 'number') {
    return [`point ${second + 1}`, ...rest.map(name)].join(', ')
  }
  if (first === 'baseline' && typeof rest[0] === 'number') return `baseline ${second}, reading ${rest[0] + 1}`
  if (first === 'device' && second === 'ranges' && rest.length > 0) {
    return [`range ${rest[0]}`, ...rest.slice(1).map(name)].join(', ')
  }
  return (second === undefined ? [first] : [first, second, ...rest]).map(name).join(', ')
}
