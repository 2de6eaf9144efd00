import { convert } from '../../units/convert.ts'
import type { Sheet } from '../../sheet/schema.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Air changes at 50 Pa of anything built: common practice, no source. */
const [low, high] = [0.05, 60]

/** Flows below this, in any unit, look like air changes: common practice, no source. */
const fewest = 25

const asFlow = say` Were air changes typed as a flow? They differ about 150-fold.`

/** The slip that would bring the result back among possible ones, as a question. */
function slip(changes: number, { points, units: { length } }: Sheet): string {
  if (changes < low && points.every((point) => 'flow' in point && point.flow < fewest)) return asFlow
  const cubic = convert(1, 'm3', 'ft3')
  const inOther = length === 'ft' ? changes / cubic : changes * cubic
  if (inOther < low || inOther > high) return ''
  return say` Was the volume typed in ${length === 'ft' ? 'm3' : 'ft3'}? They differ 35-fold.`
}

/** Source: common practice, no source. */
export const plausibility: Check = {
  id: 'plausibility',
  name: say`Plausible result`,
  run: ({ figures, sheet }) => {
    if (sheet.subject === 'ducts') {
      const share = figures['duct-share-of-air-handler']
      if (!share) return { outcome: 'not checked', text: say`Type the air handler’s flow to check the result by it.` }
      const found = `${short(share.value, 3)} %`
      if (share.value <= 100)
        return { outcome: 'good', text: say`Leakage is ${found} of the air handler’s flow.`, found }
      const text = say`Leakage is ${found} of the air handler’s flow. Check both flows and their units.`
      return { outcome: 'bad', text, found, expected: say`up to 100 %` }
    }
    const changes = figures['air-changes-50']
    const flow = figures['flow-50']!
    const cfm = convert(flow.value, flow.unit, 'cfm')
    if (!changes) {
      const found = `${short(flow.value, 3)} ${flow.unit}`
      if (cfm >= 20)
        return { outcome: 'not checked', text: say`Type the volume to check the result by air changes.`, found }
      return {
        outcome: 'doubtful',
        text: say`${found} is very little for a building.${sheet.points.every((point) => 'flow' in point) ? asFlow : ''}`,
        found,
      }
    }
    const found = `${short(changes.value, 3)} ACH50`
    const expected = say`${low} to ${high} ACH50`
    if (changes.value < low) {
      const text = say`${found} is tighter than anything built. Check flow and volume and their units.${slip(changes.value, sheet)}`
      return { outcome: 'bad', text, found, expected }
    }
    if (changes.value > high) {
      const text = say`${found} is leakier than a building can be. Check flow and volume and their units.${slip(changes.value, sheet)}`
      return { outcome: 'bad', text, found, expected }
    }
    return { outcome: 'good', text: say`${found} is a possible result.`, found, expected }
  },
}
