import type { Line } from '../fit.ts'
import { rules } from '../rules.ts'
import { short } from '../say.ts'
import type { Check, CheckContext } from './check.ts'
import { say } from '../../words/say.ts'

type Result = ReturnType<Check['run']>

/** Repeats further apart than this share of their mean are asked about: common practice, no source. */
const apart = 0.05

/** A point with more than this share in the exponent decides it alone: common practice, no source. */
const mostLeverage = 0.9

/** Readings at the same pressure: how many, and how far apart. */
function repeats({ sheet, leak: { stations } }: CheckContext): Result {
  const counts = stations.map(({ from }) => from.length)
  const most = Math.max(0, ...stations.map(({ scatter }) => scatter?.spread ?? 0))
  const [many, spread] = [counts.join(say` and `), short(100 * most, 2)]
  const found =
    Math.max(...counts) > 1
      ? say`${many} readings, up to ${spread} % apart`
      : say`${many} reading, up to ${spread} % apart`
  const expected = say`several, up to ${100 * apart} % apart`
  if (Math.min(...counts) < 2) {
    if (sheet.procedure === 'one-point') return undefined
    const text = say`ASTM E1827 averages several readings at either pressure. Take more within 3 Pa of each.`
    return { outcome: 'doubtful', text, found, expected }
  }
  if (most <= apart) return { outcome: 'good', text: say`The repeated readings agree.`, found, expected }
  const text = say`The repeated readings lie ${short(100 * most, 2)} % apart. Look for a slip in one, or average each for longer.`
  return { outcome: 'doubtful', text, found, expected }
}

/** The point that decides the exponent alone, if there is one. */
function decisive(line: Line, pressures: readonly number[]): number | undefined {
  const leverage = (pressure: number) => 1 / line.count + (Math.log(pressure) - line.meanX) ** 2 / line.sumSquares
  const index = pressures.findIndex((pressure) => leverage(pressure) > mostLeverage)
  return index < 0 ? undefined : index
}

/**
 * Number and spread of points. Source: five or more: ASTM E779, ISO 9972 (from memory); repeats and spread: common
 * practice, no source.
 */
export const points: Check = {
  id: 'points',
  name: say`Number and spread of points`,
  run: (context) => {
    const { sheet, readings, leak } = context
    if (!leak.line) return repeats(context)
    const pressures = readings.readings.map(({ pressure }) => pressure)
    const ratio = pressures.reduce((a, b) => Math.max(a, b)) / pressures.reduce((a, b) => Math.min(a, b))
    const found = say`${pressures.length} points, highest ${short(ratio, 2)} times the lowest`
    const expected = say`5 points or more, highest at least twice the lowest`
    if (pressures.length < 5) {
      const text = say`${pressures.length} points; ${rules[sheet.procedure]!} asks for 5 or more. Take more.`
      return { outcome: 'bad', text, found, expected }
    }
    if (ratio < 2) {
      const text = say`The pressures lie close together, so the exponent is uncertain. Spread them further.`
      return { outcome: 'doubtful', text, found, expected }
    }
    const alone = decisive(leak.line, pressures)
    if (alone !== undefined) {
      const text = say`Point ${readings.readings[alone]!.number} decides the exponent alone, as the others lie close together. Take more points between.`
      return { outcome: 'doubtful', text, found, expected }
    }
    return { outcome: 'good', text: say`Enough points over enough pressures.`, found, expected }
  },
}
