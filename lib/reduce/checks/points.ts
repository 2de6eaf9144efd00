import { targetOf } from '../leak.ts'
import { short } from '../say.ts'
import type { Check, CheckContext } from './check.ts'

function onePoint({ sheet, readings, leak }: CheckContext): ReturnType<Check['run']> {
  const target = targetOf(sheet)
  const { pressure } = readings.readings[leak.used!]!
  const ratio = Math.max(pressure / target, target / pressure)
  const found = `${short(pressure, 3)} Pa`
  const expected = `near ${target} Pa`
  if (ratio <= 1.1) return { outcome: 'good', text: `The point was taken near ${target} Pa.`, found, expected }
  return {
    outcome: ratio > 2 ? 'bad' : 'doubtful',
    text: `The point was taken at ${found}, so the result at ${target} Pa hangs on the assumed exponent. Get nearer to ${target} Pa, or take five points or more.`,
    found,
    expected,
  }
}

/** Number and spread of points: ASTM E779 and ISO 9972 (from memory). */
export const points: Check = {
  id: 'points',
  name: 'Number and spread of points',
  run: (context) => {
    const { sheet, readings } = context
    if (sheet.procedure === 'one-point') return onePoint(context)
    const pressures = readings.readings.map(({ pressure }) => pressure)
    const low = pressures.reduce((a, b) => Math.min(a, b))
    const high = pressures.reduce((a, b) => Math.max(a, b))
    const found = `${pressures.length} points, ${short(low, 3)} to ${short(high, 3)} Pa`
    if (sheet.procedure === 'astm-e779') {
      const expected = '5 points or more, about 10 to 60 Pa'
      if (pressures.length < 5) {
        return {
          outcome: 'bad',
          text: `${pressures.length} points; ASTM E779 asks for 5 or more. Take more.`,
          found,
          expected,
        }
      }
      if (high < low * 2 || low > 25 || high < 40) {
        const text = 'The pressures span little of 10 to 60 Pa, so the exponent is uncertain. Spread them further.'
        return { outcome: 'doubtful', text, found, expected }
      }
      return { outcome: 'good', text: 'Enough points over enough pressures.', found, expected }
    }
    const least = Math.max(10, 5 * Math.abs(readings.baseline.mean))
    const expected = `5 points or more, lowest at least ${short(least, 3)} Pa, highest at least 50 Pa`
    if (pressures.length < 5) {
      return {
        outcome: 'bad',
        text: `${pressures.length} points; ISO 9972 asks for 5 or more. Take more.`,
        found,
        expected,
      }
    }
    if (high < 25)
      return { outcome: 'bad', text: 'No point reaches 25 Pa. Use a larger device or more of them.', found, expected }
    if (low < least * 0.99) {
      const text = `The lowest point is ${short(low, 3)} Pa; 10 Pa or five times the baseline is the least. Leave it out or test in calmer weather.`
      return { outcome: 'doubtful', text, found, expected }
    }
    if (high < 50 * 0.99) {
      const text = `The highest point is ${short(high, 3)} Pa; 50 Pa is asked for. Report why it was not reached.`
      return { outcome: 'doubtful', text, found, expected }
    }
    return { outcome: 'good', text: 'Enough points over enough pressures.', found, expected }
  },
}
