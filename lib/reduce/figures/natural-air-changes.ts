import { named } from '../say.ts'
import { airChanges50 } from './air-changes-50.ts'
import type { Figure } from './figure.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const naturalAirChanges: Figure = {
  id: 'natural-air-changes',
  label: term`natural ACH`,
  name: say`natural air changes per hour, rule of thumb`,
  group: 'ventilation',
  subject: 'enclosure',
  decimals: { '1/h': 2 },
  needs: ['volume'],
  formula: 'ACH = ACH50 / 20',
  source: say`common practice, no source`,
  compute: ({ of }) => {
    const { value } = of(airChanges50)
    return { value: value / 20, unit: '1/h', note: say`A rule of thumb.`, values: () => named(['ACH50', value]) }
  },
}
