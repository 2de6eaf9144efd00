import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Source: ideal gas law; thresholds: ANSI/RESNET/ICC 380 (from memory); that the air around ducts is nearly equal: common practice, no source. */
export const air: Check = {
  id: 'air',
  name: say`Air correction`,
  run: ({ readings: { air: found }, sheet: { subject, air: typed } }) => {
    if (typed && !found) {
      const text = say`The air is within the thresholds of ANSI/RESNET/ICC 380, so flows are not corrected for it.`
      return { outcome: 'good', text }
    }
    if (!found) {
      const text = say`Temperatures not given, so flows are not corrected for the density of the air. Type both to correct them.`
      return { outcome: 'not checked', text }
    }
    const values = say`${short(found.indoor, 4)} and ${short(found.outdoor, 4)} kg/m³`
    if (subject === 'ducts' && Math.abs(found.indoor / found.outdoor - 1) > 0.03) {
      const text = say`For ducts, indoor is the air inside the ducts and outdoor the air around the device. These two differ much: check both.`
      return { outcome: 'doubtful', text, found: values, expected: say`nearly equal` }
    }
    const place =
      typed?.elevation === undefined && typed?.barometer === undefined
        ? say` Sea level is assumed: type the elevation if it is another.`
        : ''
    return {
      outcome: 'good',
      text: say`Corrected for air of ${values}, indoors and outdoors.${place}`,
      found: values,
    }
  },
}
