import { convert } from '../../units/convert.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Temperature difference times height. Source: 200 m K: ASTM E779, 250 m K: ISO 9972 (from memory). */
export const weather: Check = {
  id: 'weather',
  name: say`Temperature difference and height`,
  run: ({ sheet: { subject, air, building, units, procedure } }) => {
    if (subject === 'ducts' || procedure === 'astm-e3158') return undefined
    if (!air || building?.height === undefined) {
      return { outcome: 'not checked', text: say`Type both temperatures and the height to check for stack effect.` }
    }
    const [inside, outside] = [air.indoor, air.outdoor].map((value) => convert(value, units.temperature, 'degC'))
    const product = Math.abs(inside! - outside!) * convert(building.height, units.length, 'm')
    const most = procedure === 'iso-9972' ? 250 : 200
    const found = `${short(product, 3)} m K`
    const expected = say`up to ${most} m K`
    if (product <= most) return { outcome: 'good', text: say`Little stack effect.`, found, expected }
    const text = say`Temperature difference times height is ${found}, over ${most}: stack effect disturbs the test. Test in milder weather, or in both directions.`
    return { outcome: 'doubtful', text, found, expected }
  },
}
