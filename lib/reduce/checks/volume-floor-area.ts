import { convert } from '../../units/convert.ts'
import { short } from '../say.ts'
import type { Check } from './check.ts'
import { say } from '../../words/say.ts'

/** Mean height of the storeys, ft: common practice, no source. */
const [low, high] = [7, 15]

/** Source: common practice, no source. */
export const volumeFloorArea: Check = {
  id: 'volume-floor-area',
  name: say`Volume and floor area`,
  run: ({ sheet: { subject, building, units } }) => {
    if (subject === 'ducts') return undefined
    if (building?.volume === undefined || building.floorArea === undefined) {
      return { outcome: 'not checked', text: say`Type volume and floor area to check one by the other.` }
    }
    const height = building.volume / building.floorArea
    const feet = convert(height, units.length, 'ft')
    const found = `${short(height, 3)} ${units.length}`
    const [least, most] = [low, high].map((limit) => short(convert(limit, 'ft', units.length), 2))
    const expected = say`${least!} to ${most!} ${units.length}`
    if (feet >= low && feet <= high) {
      return { outcome: 'good', text: say`Volume over floor area is ${found}, a usual ceiling.`, found, expected }
    }
    const text = say`Volume over floor area is ${found}; a ceiling is ${expected}. Check both numbers and their units.`
    return { outcome: 'doubtful', text, found, expected }
  },
}
