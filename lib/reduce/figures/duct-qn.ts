import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import { ductFlow25 } from './duct-flow-25.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

export const ductQn: Figure = {
  id: 'duct-qn',
  label: 'Qn',
  name: say`duct leakage at 25 Pa over floor area`,
  group: 'ducts',
  subject: 'ducts',
  decimals: { 'cfm/ft2': 3, 'cfm/100ft2': 1, 'm3/(h.m2)': 2, 'L/(s.m2)': 2 },
  needs: ['floorArea'],
  formula: say`Qn = Q25 / A, in cfm and ft2`,
  source: say`common practice, no source`,
  compute: ({ of, units }, { floorArea }) => {
    const { value, unit, uncertainty, note } = of(ductFlow25)
    const flow = convert(value, unit, 'cfm')
    const area = convert(floorArea, `${units.length}2`, 'ft2')
    return {
      value: flow / area,
      unit: 'cfm/ft2',
      uncertainty,
      sized: true,
      note,
      values: () => named(['Q25', flow, 'cfm'], ['A', area, 'ft2']),
    }
  },
}
