import { convert } from '../../units/convert.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'

/** Air changes at 50 Pa of anything built: common practice, no source. */
const [low, high] = [0.05, 60]

export const plausibility: Check = {
  id: 'plausibility',
  name: 'Plausible result',
  run: ({ figures, sheet: { subject, points } }) => {
    if (subject === 'ducts') {
      const share = figures['duct-share-of-air-handler']
      if (!share) return { outcome: 'not checked', text: 'Type the air handler’s flow to check the result by it.' }
      const found = `${short(share.value, 3)} %`
      if (share.value <= 100) return { outcome: 'good', text: `Leakage is ${found} of the air handler’s flow.`, found }
      const text = `Leakage is ${found} of the air handler’s flow. Check both flows and their units.`
      return { outcome: 'bad', text, found, expected: 'up to 100 %' }
    }
    const changes = figures['air-changes-50']
    const flow = figures['flow-50']!
    const cfm = convert(flow.value, flow.unit, 'cfm')
    const typed = points.every((point) => 'flow' in point)
    const mixed = typed ? ' Were air changes typed as a flow? They differ about 150-fold.' : ''
    if (!changes) {
      const found = `${short(flow.value, 3)} ${flow.unit}`
      if (cfm >= 20)
        return { outcome: 'not checked', text: 'Type the volume to check the result by air changes.', found }
      return { outcome: 'doubtful', text: `${found} is very little for a building.${mixed}`, found }
    }
    const found = `${short(changes.value, 3)} ACH50`
    const expected = `${low} to ${high} ACH50`
    if (changes.value < low) {
      const text = `${found} is tighter than anything built. Check flow and volume and their units.${mixed}`
      return { outcome: 'bad', text, found, expected }
    }
    if (changes.value > high) {
      const text = `${found} is leakier than a building can be. Check flow and volume and their units.`
      return { outcome: 'bad', text, found, expected }
    }
    return { outcome: 'good', text: `${found} is a possible result.`, found, expected }
  },
}
