import { convert } from '../../units/convert.ts'
import { named, short } from '../say.ts'
import type { Figure } from './figure.ts'
import { infiltrationCredit } from './infiltration-credit.ts'
import { ventilationRequired } from './ventilation-required.ts'

export const fanRequired: Figure = {
  id: 'fan-required',
  label: 'fan required',
  name: 'fan flow required, balanced system, detached dwelling',
  group: 'ventilation',
  subject: 'enclosure',
  decimals: { cfm: 1, 'L/s': 1, 'm3/h': 1 },
  needs: ['floorArea', 'height', 'bedrooms', 'weatherShieldingFactor'],
  formula: 'Qfan = Qtot − Qinf, not below 0',
  source: 'ASHRAE 62.2-2016 and later (from memory)',
  compute: ({ of, leak }) => {
    const { value: total, unit } = of(ventilationRequired)
    const { value: credit, half = 0 } = of(infiltrationCredit)
    const fan = Math.max(0, total - credit)
    const { low, high } = leak.limits(credit, half)
    const oneWay = Math.max(0, total - (credit * credit) / total)
    const small = convert(fan, unit, 'cfm') < 15 ? ' Below 15 cfm no fan is asked for.' : ''
    return {
      value: fan,
      unit,
      low: Math.max(0, total - high),
      high: Math.max(0, total - low),
      note: `Balanced system; exhaust or supply only: ${short(oneWay, 3)} ${unit}.${small} Check with your local code.`,
      values: named(['Qtot', total, unit], ['Qinf', credit, unit]),
    }
  },
}
