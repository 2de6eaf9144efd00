import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const ventilationRequired: Figure = {
  id: 'ventilation-required',
  label: term`ventilation required`,
  name: say`whole-dwelling ventilation required`,
  group: 'ventilation',
  subject: 'enclosure',
  decimals: { cfm: 1, 'L/s': 1, 'm3/h': 1 },
  needs: ['floorArea', 'bedrooms'],
  rests: 'on no reading',
  formula: say`Qtot = (0.03 × A + 7.5 × (bedrooms + 1)) × k, A in ft2, at least 1 bedroom, k from cfm to the unit`,
  source: say`ASHRAE 62.2-2013 and later (from memory)`,
  compute: ({ units }, { floorArea, bedrooms }) => {
    const area = convert(floorArea, `${units.length}2`, 'ft2')
    // A dwelling without a bedroom of its own counts one.
    const counted = Math.max(1, bedrooms)
    const unit = units.length === 'ft' ? 'cfm' : 'L/s'
    return {
      value: convert(0.03 * area + 7.5 * (counted + 1), 'cfm', unit),
      unit,
      values: () => named(['A', area, 'ft2'], [say`bedrooms`, counted], ['k', convert(1, 'cfm', unit)]),
    }
  },
}
