import { short } from '../say.ts'
import type { Check } from './check.ts'

/** Source: ideal gas law; that the air around ducts is nearly equal: common practice, no source. */
export const air: Check = {
  id: 'air',
  name: 'Air correction',
  run: ({ readings: { air: found }, sheet: { subject, air: typed } }) => {
    if (!found) {
      const text =
        'Temperatures not given, so flows are not corrected for the density of the air. Type both to correct them.'
      return { outcome: 'not checked', text }
    }
    const values = `${short(found.indoor, 4)} and ${short(found.outdoor, 4)} kg/m3`
    if (subject === 'ducts' && Math.abs(found.indoor / found.outdoor - 1) > 0.03) {
      const text =
        'For ducts, indoor is the air inside the ducts and outdoor the air around the device. These two differ much: check both.'
      return { outcome: 'doubtful', text, found: values, expected: 'nearly equal' }
    }
    const place =
      typed?.elevation === undefined && typed?.barometer === undefined
        ? ' Sea level is assumed: type the elevation if it is another.'
        : ''
    return { outcome: 'good', text: `Corrected for air of ${values}, indoors and outdoors.${place}`, found: values }
  },
}
