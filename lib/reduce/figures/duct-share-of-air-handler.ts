import { named } from '../say.ts'
import { ductFlow25 } from './duct-flow-25.ts'
import type { Figure } from './figure.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const ductShareOfAirHandler: Figure = {
  id: 'duct-share-of-air-handler',
  label: term`% of air-handler flow`,
  name: say`duct leakage at 25 Pa as a share of the air handler’s flow`,
  group: 'ducts',
  subject: 'ducts',
  decimals: { '%': 1, '1': 3 },
  needs: ['airHandlerFlow'],
  formula: say`100 × Q25 / air-handler flow`,
  source: say`common practice, no source`,
  compute: ({ of }, { airHandlerFlow }) => {
    const { value, unit, uncertainty, note } = of(ductFlow25)
    return {
      value: (100 * value) / airHandlerFlow,
      unit: '%',
      uncertainty,
      note,
      values: () => named(['Q25', value, unit], [say`air-handler flow`, airHandlerFlow, unit]),
    }
  },
}
