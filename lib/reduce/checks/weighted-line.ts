import { targetOf } from '../leak.ts'
import { otherLine } from '../other-line.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/**
 * The line by weights beside the one of least squares, which lets a low point in wind count as much as a high one.
 * Source: AIVC conference 2013 and Building and Environment 2020 (abstracts read; the equations are derived).
 */
export const weightedLine: Check = {
  id: 'weighted-line',
  name: say`Weighted line`,
  run: ({ sheet, leak }) => {
    const target = targetOf(sheet)
    const other = otherLine(leak, target)
    if (!other) return undefined
    const { exponent, ratio, outside } = other
    const percent = short(Math.abs(100 * (ratio(target) - 1)), 2)
    const found = say`n ${short(leak.exponent, 3)} and ${short(exponent, 3)}, flow at ${target} Pa ${percent} % apart`
    const expected = say`within the limits of the result`
    if (outside === undefined) {
      return { outcome: 'good', text: say`Least squares and the line by weights agree.`, found, expected }
    }
    const text = leak.byWeights
      ? say`Least squares, which the standard’s own method uses, gives another flow at ${outside} Pa, outside the limits. Report both, or read the low points again in less wind.`
      : say`The line by weights, in which low points in wind count less, gives another flow at ${outside} Pa, outside the limits. Read the low points again in less wind, or choose the weighted line where the program allows it.`
    return { outcome: 'doubtful', text, found, expected }
  },
}
