/** What is wrong with a sheet, as data: one issue for each cell that stands in the way. */

import { say, shown } from '../words/say.ts'

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
  | 'unknown key'

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
  flowPercent: say`flow uncertainty`,
  pressurePercent: say`pressure uncertainty`,
  pressureFloor: say`least pressure uncertainty`,
  volumePercent: say`volume uncertainty`,
  indoor: say`indoor temperature`,
  outdoor: say`outdoor temperature`,
  minPressure: say`lowest pressure`,
  maxPressure: say`highest pressure`,
  airHandlerFlow: say`air-handler flow`,
  pressureScatter: say`scatter of a pressure reading`,
}

function name(key: string | number): string {
  const text = String(key)
  return words[text] ?? shown(text.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`))
}

/**
 * The name of a cell as a message uses it.
 *
 * @example cellName(['points', 2, 'devicePressure']) // 'point 3, device pressure'
 */
export function cellName(path: readonly (string | number)[]): string {
  if (path.length === 0) return say`the sheet`
  const [first = '', second, ...rest] = path
  const last = name(path.at(-1)!)
  if (first === 'points' && second !== undefined)
    return [say`point ${Number(second) + 1}`, ...rest.map(name)].join(', ')
  if (first === 'baseline' && second !== undefined) {
    const side = second === 'before' ? say`baseline before` : say`baseline after`
    return rest[0] === undefined ? side : say`${side}, reading ${Number(rest[0]) + 1}`
  }
  if (first === 'device' && rest.length > 0) return [say`range ${rest[0] ?? ''}`, ...rest.slice(1).map(name)].join(', ')
  if (first === 'averaging' && second !== undefined)
    return second === 'baseline' ? say`averaging time of the baseline` : say`averaging time of a reading`
  if (first === 'fieldCheck' && second !== undefined) return say`${last} of the known hole`
  return first === 'units' && second !== undefined ? say`unit of ${last}` : last
}

/** A text with a capital, as a sentence begins. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
