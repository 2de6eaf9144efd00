/** The wind during the test, as noted. */
import type { CheckResult } from '../../reduce/report.ts'
import type { Test } from '../schema.ts'
import { say, shown } from '../../words/say.ts'

/** Source: above 6 m/s (Beaufort 3), ASTM E779 and ISO 9972 (from memory). */
export function wind(test: Test): CheckResult {
  const id = 'wind'
  if (test.wind === '') return { id, outcome: 'not checked', text: say`Note the wind of the test.` }
  if (test.wind !== 'windy') return { id, outcome: 'good', text: say`Little wind.`, found: shown(test.wind) }
  const text = say`Wind shakes the readings. Take longer averages and more baselines, or test in calmer weather.`
  return { id, outcome: 'doubtful', text, found: say`windy`, expected: say`up to 6 m/s` }
}
