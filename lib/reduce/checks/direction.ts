import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Source: common practice, no source. */
export const direction: Check = {
  id: 'direction',
  name: say`Signs and direction`,
  run: ({ sheet, readings: { baseline } }) => {
    const negative = sheet.points[0]!.pressure < 0
    if (sheet.direction === 'pressurize' && negative) {
      return {
        outcome: 'doubtful',
        text: say`The pressures have a minus sign, as when depressurizing. Check the direction, or whether the hoses were swapped.`,
        found: say`minus sign`,
        expected: say`no minus sign`,
      }
    }
    if (sheet.direction === 'depressurize' && !negative && baseline.mean > 0.5) {
      return {
        outcome: 'doubtful',
        text: say`The baseline of ${short(baseline.mean, 3)} Pa is taken as the house above outdoors, so it adds to the test pressure. If the house was below, type it with a minus sign.`,
        found: `${short(baseline.mean, 3)} Pa`,
      }
    }
    return undefined
  },
}
