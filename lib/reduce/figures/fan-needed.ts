import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { infiltrationCredit } from './infiltration-credit.ts'
import { ventilationRequired } from './ventilation-required.ts'
import { say } from '../../words/say.ts'

/** Below this no fan is asked for, cfm: ASHRAE 62.2-2016 and later, one secondary source. */
const smallest = 15

/** What a fan has to add to the air that comes in by itself, not below 0. */
export function fanNeeded({
  needed,
  ...rest
}: Pick<Figure, 'id' | 'label' | 'name' | 'formula'> & { needed: (total: number, credit: number) => number }): Figure {
  return {
    group: 'ventilation',
    subject: 'enclosure',
    decimals: { cfm: 1, 'L/s': 1, 'm3/h': 1 },
    needs: ['floorArea', 'height', 'bedrooms', 'weatherShieldingFactor'],
    source: say`ASHRAE 62.2-2016 and later (from memory)`,
    ...rest,
    compute: ({ of, leak }) => {
      const { value: total, unit } = of(ventilationRequired)
      const { value: credit, uncertainty } = of(infiltrationCredit)
      const { low, high } = leak.limits(credit, uncertainty?.half ?? 0)
      const fan = (share: number) => Math.max(0, needed(total, share))
      const value = fan(credit)
      const notes = [
        value === 0 && say`What comes in by itself is enough, so it is 0.`,
        value > 0 && convert(value, unit, 'cfm') < smallest && say`Below ${smallest} cfm no fan is asked for.`,
        say`Check with your local code.`,
      ]
      return {
        value,
        unit,
        low: fan(high),
        high: fan(low),
        note: notes.filter(Boolean).join(' '),
        values: () => named(['Qtot', total, unit], ['Qinf', credit, unit]),
      }
    },
  }
}
