import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { specificLeakageArea } from './specific-leakage-area.ts'
import { say } from '../../words/say.ts'

export const normalizedLeakage: Figure = {
  id: 'normalized-leakage',
  label: 'NL',
  name: say`normalized leakage`,
  group: 'leakage areas',
  subject: 'enclosure',
  decimals: { '1': 3 },
  needs: ['floorArea', 'height'],
  formula: 'NL = 1000 × SLA × (H / 8.202)^0.4, H in ft',
  source: say`ASHRAE 62.2, ANSI 301 (from memory)`,
  compute: ({ of, units }, { height }) => {
    const { value, uncertainty } = of(specificLeakageArea)
    const feet = convert(height, units.length, 'ft')
    return {
      value: 1000 * value * (feet / 8.202) ** 0.4,
      unit: '1',
      uncertainty,
      sized: true,
      values: () => named(['SLA', value], ['H', feet, 'ft']),
    }
  },
}
