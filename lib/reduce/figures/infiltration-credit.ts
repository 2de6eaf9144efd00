import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { normalizedLeakage } from './normalized-leakage.ts'
import { effectiveLeakageArea } from './effective-leakage-area.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const infiltrationCredit: Figure = {
  id: 'infiltration-credit',
  label: term`infiltration credit`,
  name: say`infiltration counted as ventilation`,
  group: 'ventilation',
  subject: 'enclosure',
  decimals: { cfm: 1, 'L/s': 1, 'm3/h': 1 },
  needs: ['floorArea', 'height', 'weatherShieldingFactor'],
  formula: say`Qinf = NL × wsf × A / 7.3 × k, A in ft2, k from cfm to the unit`,
  source: say`ASHRAE 62.2 (from memory)`,
  compute: ({ of, units }, { floorArea, weatherShieldingFactor }) => {
    const { value } = of(normalizedLeakage)
    const area = convert(floorArea, `${units.length}2`, 'ft2')
    const unit = units.length === 'ft' ? 'cfm' : 'L/s'
    return {
      value: convert((value * weatherShieldingFactor * area) / 7.3, 'cfm', unit),
      unit,
      // The floor area cancels out: NL is divided by it.
      uncertainty: of(effectiveLeakageArea).uncertainty,
      values: () =>
        named(['NL', value], ['wsf', weatherShieldingFactor], ['A', area, 'ft2'], ['k', convert(1, 'cfm', unit)]),
    }
  },
}
