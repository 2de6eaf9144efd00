import { short } from '../say.ts'
import { type ZeroFlow, largestZeroFlow } from '../zero-flow.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Pa: ISO 9972 limits the means of either sign to 5 (from memory); the spread is common practice, no source. */
const most = 5
const spread = 5

/** Readings on either side of a test of a large building: ASTM E3158 (from memory). */
const leastOfLarge = 12

/** Less than any gauge shows: the rounding of a mean decides nothing. Pa. */
const noise = 1e-9

function tooLarge({ mean, all }: ZeroFlow): string {
  const size = short(Math.abs(mean), 3)
  if (all) return say`The baseline is ${size} Pa; at most ${most} Pa are accepted. Test again in calmer weather.`
  return mean > 0
    ? say`The baseline readings above zero have a mean of ${size} Pa; at most ${most} Pa are accepted of either sign. Test again in calmer weather.`
    : say`The baseline readings below zero have a mean of ${size} Pa; at most ${most} Pa are accepted of either sign. Test again in calmer weather.`
}

/** Means before and after on either side of zero, further apart than readings may be. */
const opposed = (before: number | undefined, after: number | undefined): boolean =>
  before !== undefined && after !== undefined && before * after < 0 && Math.abs(before - after) > spread + noise

/**
 * Source: size, positive and negative readings averaged apart: ISO 9972 (from memory); spread: common practice, no source.
 */
export const baseline: Check = {
  id: 'baseline',
  name: say`Baseline`,
  run: ({ sheet, readings }) => {
    const { before, after } = readings.baseline
    const all = [...sheet.baseline.before, ...sheet.baseline.after]
    if (all.length === 0) {
      return {
        outcome: 'not checked',
        text: say`No baseline typed. Read the pressure with the device closed, before and after.`,
      }
    }
    const largest = largestZeroFlow(sheet.baseline)
    const size = Math.abs(largest?.mean ?? 0)
    const width = all.reduce((a, b) => Math.max(a, b)) - all.reduce((a, b) => Math.min(a, b))
    const found = say`means of one sign up to ${short(size, 3)} Pa, readings ${short(width, 3)} Pa apart`
    const expected = say`means of either sign up to ${most} Pa, readings within ${spread} Pa`
    if (largest && size > most + noise) {
      return {
        outcome: sheet.procedure === 'iso-9972' ? 'bad' : 'doubtful',
        text: tooLarge(largest),
        found,
        expected,
      }
    }
    if (opposed(before, after)) {
      const text = say`The baseline is ${short(before!, 3)} Pa before the test and ${short(after!, 3)} Pa after it. The two do not cancel: the pressure moved by ${short(Math.abs(before! - after!), 3)} Pa while the house was tested. Test again in calmer weather.`
      return { outcome: 'doubtful', text, found, expected }
    }
    if (width > spread + noise) {
      const text = say`The baseline wandered over ${short(width, 3)} Pa: wind. Average for longer, or test again in calmer weather.`
      return { outcome: 'doubtful', text, found, expected }
    }
    if ((before === undefined || after === undefined) && sheet.procedure !== 'one-point') {
      const text =
        after === undefined
          ? say`No baseline after the test. The procedure asks for one on either side.`
          : say`No baseline before the test. The procedure asks for one on either side.`
      return { outcome: 'doubtful', text, found, expected: say`readings before and after` }
    }
    const fewest = Math.min(sheet.baseline.before.length, sheet.baseline.after.length)
    if (sheet.procedure === 'astm-e3158' && fewest < leastOfLarge) {
      const text = say`${fewest} baseline readings on one side; ASTM E3158 asks for ${leastOfLarge} or more before and after, with the fans off and covered. Take more.`
      return { outcome: 'doubtful', text, found: `${fewest}`, expected: `≥ ${leastOfLarge}` }
    }
    return { outcome: 'good', text: say`The baseline is small and steady.`, found, expected }
  },
}
