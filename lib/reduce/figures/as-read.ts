import { named, short } from '../say.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

/**
 * The flow at a pressure as the instrument's own display should give it: corrected for the baseline, not for the air.
 *
 * @param pressure Pa
 */
export function asRead(pressure: number, more: Pick<Figure, 'id' | 'group' | 'label'> & Partial<Figure>): Figure {
  return {
    name: say`flow at ${pressure} Pa without air correction`,
    decimals: { cfm: 0, 'm3/h': 0, 'L/s': 1 },
    needs: [],
    rests: 'on the fit',
    formula: `Q = Cread × ${pressure}^n`,
    source: say`common practice, no source`,
    compute: ({ leak, units }) => ({
      value: leak.coefficientAsRead * pressure ** leak.exponent,
      unit: units.flow,
      uncertainty: leak.uncertainty(pressure, true),
      note: say`To compare with the instrument’s own display; not at standard conditions.`,
      values: () => `${named(['Cread', leak.coefficientAsRead, `${units.flow}/Pa^n`])}, n = ${short(leak.exponent)}`,
    }),
    ...more,
  }
}
