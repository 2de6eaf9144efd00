import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Pa: ISO 9972 limits the mean to 5 (from memory); the spread is common practice, no source. */
const most = 5
const spread = 5

/** Source: size: ISO 9972 (from memory); spread: common practice, no source. */
export const baseline: Check = {
  id: 'baseline',
  name: say`Baseline`,
  run: ({ sheet, readings }) => {
    const { before, after } = sheet.baseline
    const means = [readings.baseline.before, readings.baseline.after].filter((mean) => mean !== undefined)
    const all = [...before, ...after]
    if (all.length === 0) {
      return {
        outcome: 'not checked',
        text: say`No baseline typed. Read the pressure with the device closed, before and after.`,
      }
    }
    const size = Math.max(...means.map(Math.abs))
    const width = all.reduce((a, b) => Math.max(a, b)) - all.reduce((a, b) => Math.min(a, b))
    const found = say`mean up to ${short(size, 3)} Pa, readings ${short(width, 3)} Pa apart`
    const expected = say`mean up to ${most} Pa, readings within ${spread} Pa`
    if (size > most) {
      const text = say`The baseline is ${short(size, 3)} Pa; at most ${most} Pa are accepted. Test again in calmer weather.`
      return { outcome: sheet.procedure === 'iso-9972' ? 'bad' : 'doubtful', text, found, expected }
    }
    if (width > spread) {
      const text = say`The baseline wandered over ${short(width, 3)} Pa: wind. Average for longer, or test again in calmer weather.`
      return { outcome: 'doubtful', text, found, expected }
    }
    if (means.length < 2 && sheet.procedure !== 'one-point') {
      const text =
        before.length > 0
          ? say`No baseline after the test. The procedure asks for one on either side.`
          : say`No baseline before the test. The procedure asks for one on either side.`
      return { outcome: 'doubtful', text, found, expected: say`readings before and after` }
    }
    return { outcome: 'good', text: say`The baseline is small and steady.`, found, expected }
  },
}
