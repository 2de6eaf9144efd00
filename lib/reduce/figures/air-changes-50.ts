import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { flow50 } from './flow-50.ts'
import { say } from '../../words/say.ts'

export const airChanges50: Figure = {
  id: 'air-changes-50',
  label: 'ACH50',
  labels: { '1/h': 'ACH50' },
  name: say`air changes per hour at 50 Pa`,
  group: 'what forms ask',
  subject: 'enclosure',
  decimals: { '1/h': 2 },
  needs: ['volume'],
  formula: say`ACH50 = Q50 per hour / V`,
  source: say`ISO 9972, IECC (from memory)`,
  compute: ({ of, units }, { volume }) => {
    const { value, unit, uncertainty } = of(flow50)
    const hourly = units.length === 'ft' ? convert(value, unit, 'cfm') * 60 : convert(value, unit, 'm3/h')
    return {
      value: hourly / volume,
      unit: '1/h',
      uncertainty,
      sized: true,
      values: () =>
        named(['Q50', value, unit], [say`Q50 per hour`, hourly, `${units.length}3`], ['V', volume, `${units.length}3`]),
    }
  },
}
