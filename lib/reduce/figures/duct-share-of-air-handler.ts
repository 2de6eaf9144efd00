import { named } from '../say.ts'
import { ductFlow25 } from './duct-flow-25.ts'
import type { Figure } from './figure.ts'

export const ductShareOfAirHandler: Figure = {
  id: 'duct-share-of-air-handler',
  label: '% of air-handler flow',
  name: 'duct leakage at 25 Pa as a share of the air handler’s flow',
  group: 'ducts',
  subject: 'ducts',
  decimals: { '%': 1, '1': 3 },
  needs: ['airHandlerFlow'],
  formula: '100 × Q25 / air-handler flow',
  source: 'common practice, no source',
  compute: ({ of }, { airHandlerFlow }) => {
    const { value, unit, half, note } = of(ductFlow25)
    return {
      value: (100 * value) / airHandlerFlow,
      unit: '%',
      half,
      note,
      values: named(['Q25', value, unit], ['air-handler flow', airHandlerFlow, unit]),
    }
  },
}
