import { lowerShare } from '../estimate.ts'
import { targetOf } from '../leak.ts'
import { short } from '../say.ts'
import { largestZeroFlow } from '../zero-flow.ts'
import type { Check, CheckContext } from './check.ts'
import { say } from '../../words/say.ts'

type Result = ReturnType<Check['run']>

/** A gauge's last digit below a standard's pressure is let pass. */
const nearly = 0.99

/** How many times one pressure is the other. */
const times = (one: number, other: number) => Math.max(one / other, other / one)

function onePoint({ sheet, leak }: CheckContext): Result {
  const target = targetOf(sheet)
  const { pressure } = leak.stations[0]!
  const ratio = times(pressure, target)
  const found = `${short(pressure, 3)} Pa`
  const expected = say`near ${target} Pa`
  if (ratio <= 1.1) return { outcome: 'good', text: say`The point was taken near ${target} Pa.`, found, expected }
  return {
    outcome: ratio > 2 ? 'bad' : 'doubtful',
    text: say`The point was taken at ${found}, so the result at ${target} Pa hangs on the assumed exponent. Get nearer to ${target} Pa, or take five points or more.`,
    found,
    expected,
  }
}

/** About 50 and 12.5 Pa: ASTM E1827 (from memory); how near is common practice, no source. */
function twoPoint({ sheet, leak }: CheckContext): Result {
  const [upper, lower] = [targetOf(sheet), targetOf(sheet) * lowerShare]
  const [high, low] = leak.stations.map(({ pressure }) => pressure) as [number, number]
  const found = say`${short(high, 3)} and ${short(low, 3)} Pa`
  const expected = say`near ${upper} and ${lower} Pa`
  if (times(high, upper) <= 1.2 && times(low, lower) <= 1.2) {
    return { outcome: 'good', text: say`The points were taken near ${upper} and ${lower} Pa.`, found, expected }
  }
  const text = say`The points were taken at ${found}. Take them near ${upper} and ${lower} Pa, or take five points or more.`
  return { outcome: high < 2 * low ? 'bad' : 'doubtful', text, found, expected }
}

/** About 10 to 60 Pa: ASTM E779 (from memory); how far from it is common practice, no source. */
function e779(low: number, high: number): Result {
  const found = say`${short(low, 3)} to ${short(high, 3)} Pa`
  const expected = say`about 10 to 60 Pa`
  if (low < 8) {
    const text = say`The lowest point is ${short(low, 3)} Pa, where wind and baseline weigh most. Leave it out, or start near 10 Pa.`
    return { outcome: 'doubtful', text, found, expected }
  }
  if (low > 25 || high < 40) {
    const text =
      low > 25
        ? say`The points run from ${found}, little of 10 to 60 Pa. Take more below.`
        : say`The points run from ${found}, little of 10 to 60 Pa. Take more above.`
    return { outcome: 'doubtful', text, found, expected }
  }
  return { outcome: 'good', text: say`The points cover the pressures asked for.`, found, expected }
}

/**
 * Lowest 10 Pa or five times the largest mean of the baseline readings of one sign, highest 50 Pa, 25 Pa to be reported
 * with a note: ISO 9972 (from memory).
 */
function iso9972(low: number, high: number, baseline: number): Result {
  const least = Math.max(10, 5 * Math.abs(baseline))
  const found = say`${short(low, 3)} to ${short(high, 3)} Pa`
  const expected = say`lowest at least ${short(least, 3)} Pa, highest at least 50 Pa`
  if (high < 25 * nearly) {
    return { outcome: 'bad', text: say`No point reaches 25 Pa. Use a larger device or more of them.`, found, expected }
  }
  if (low < least * nearly) {
    const text =
      least > 10
        ? say`The lowest point is ${short(low, 3)} Pa; five times the largest baseline mean of one sign, ${short(least, 3)} Pa, is the least. Leave it out or test in calmer weather.`
        : say`The lowest point is ${short(low, 3)} Pa; 10 Pa or five times the baseline is the least. Leave it out or test in calmer weather.`
    return { outcome: 'doubtful', text, found, expected }
  }
  if (high < 50 * nearly) {
    const text = say`The highest point is ${short(high, 3)} Pa; 50 Pa is asked for. Report why it was not reached.`
    return { outcome: 'doubtful', text, found, expected }
  }
  return { outcome: 'good', text: say`The points cover the pressures asked for.`, found, expected }
}

/**
 * From 25 Pa or less to 50 Pa or more; the result at 75 Pa may be extrapolated: ASTM E3158-18, as a published rule has it
 * (California's reference appendix NA5.5).
 */
function e3158(low: number, high: number): Result {
  const found = say`${short(low, 3)} to ${short(high, 3)} Pa`
  const expected = say`from 25 Pa or less to 50 Pa or more`
  if (low > 25 / nearly || high < 50 * nearly) {
    const text =
      high < 50 * nearly
        ? say`The highest point is ${short(high, 3)} Pa; a large building is to be brought to 50 Pa at least. Use more fans.`
        : say`The lowest point is ${short(low, 3)} Pa; 25 Pa or less is asked for. Take more points below.`
    return { outcome: 'bad', text, found, expected }
  }
  if (high >= 75 * nearly) {
    return { outcome: 'good', text: say`The points cover the pressures asked for.`, found, expected }
  }
  const text = say`The points cover the pressures asked for. The result at 75 Pa is extrapolated from ${short(high, 3)} Pa: say so in the report.`
  return { outcome: 'good', text, found, expected }
}

/**
 * The lowest and highest pressure that the procedure asks for. Source: ASTM E779, ASTM E1827, ISO 9972 (from memory).
 */
export const pressures: Check = {
  id: 'pressures',
  name: say`Lowest and highest pressure`,
  run: (context) => {
    const { sheet, readings } = context
    if (sheet.procedure === 'one-point') return onePoint(context)
    if (sheet.procedure === 'two-point') return twoPoint(context)
    const all = readings.readings.map(({ pressure }) => pressure)
    const low = all.reduce((a, b) => Math.min(a, b))
    const high = all.reduce((a, b) => Math.max(a, b))
    if (sheet.procedure === 'astm-e3158') return e3158(low, high)
    return sheet.procedure === 'iso-9972'
      ? iso9972(low, high, largestZeroFlow(sheet.baseline)?.mean ?? 0)
      : e779(low, high)
  },
}
