import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import { equivalentLeakageArea } from './equivalent-leakage-area.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

export const normalizedLeakageArea: Figure = {
  id: 'normalized-leakage-area',
  label: 'NLA10',
  name: say`equivalent leakage area at 10 Pa per enclosure area`,
  group: 'leakage areas',
  subject: 'enclosure',
  decimals: { 'in2/100ft2': 2, 'cm2/m2': 2 },
  needs: ['enclosureArea'],
  formula: say`NLA = k × EqLA / A, k = 100 in in2 and ft2, else 1`,
  source: say`CAN/CGSB-149.10 (from memory)`,
  compute: ({ of, units }, { enclosureArea }) => {
    const { value, uncertainty, unit: from } = of(equivalentLeakageArea)
    const feet = units.length === 'ft'
    const area = convert(value, from, feet ? 'in2' : 'cm2')
    return {
      value: ((feet ? 100 : 1) * area) / enclosureArea,
      unit: feet ? 'in2/100ft2' : 'cm2/m2',
      uncertainty,
      sized: true,
      values: () => named(['EqLA', area, from], ['A', enclosureArea, `${units.length}2`], ['k', feet ? 100 : 1]),
    }
  },
}
