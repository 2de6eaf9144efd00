import { convert } from '../../units/convert.ts'
import { referenceDensity } from '../air.ts'
import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

/**
 * The area of one opening that would leak as much.
 *
 * @param flow figure of the flow at `pressure`
 * @param pressure Pa
 * @param discharge discharge coefficient of the opening
 */
export function leakageArea(
  flow: Figure,
  pressure: number,
  discharge: number,
  rest: Pick<Figure, 'id' | 'label' | 'name' | 'source'>,
): Figure {
  const speed = Math.sqrt((2 * pressure) / referenceDensity)
  return {
    group: 'leakage areas',
    subject: 'enclosure',
    decimals: { in2: 1, ft2: 2, cm2: 0, m2: 4 },
    needs: [],
    formula: say`A = k × Q${pressure} / (Cd × √(2 × ${pressure} / ${referenceDensity})), Q in m3/s, k from m2 to the unit`,
    compute: ({ of, units }) => {
      const { value, uncertainty } = of(flow)
      const perSecond = convert(value, units.flow, 'm3/h') / 3600
      const unit = units.length === 'ft' ? 'in2' : 'cm2'
      return {
        value: convert(perSecond / (discharge * speed), 'm2', unit),
        unit,
        uncertainty,
        note: say`At ${pressure} Pa, discharge coefficient ${discharge}.`,
        values: () => named([`Q${pressure}`, perSecond, 'm3/s'], ['Cd', discharge], ['k', convert(1, 'm2', unit)]),
      }
    },
    ...rest,
  }
}
