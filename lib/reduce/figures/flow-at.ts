import { short } from '../say.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

/**
 * The leakage flow at a pressure and standard conditions.
 *
 * @param pressure Pa
 */
export function flowAt(pressure: number, more: Partial<Figure> = {}): Figure {
  return {
    id: `flow-${pressure}`,
    label: `Q${pressure}`,
    labels: { cfm: `CFM${pressure}` },
    name: say`leakage flow at ${pressure} Pa`,
    group: 'flows at other pressures',
    decimals: { cfm: 0, 'm3/h': 0, 'L/s': 1 },
    needs: [],
    formula: `Q${pressure} = C × ${pressure}^n`,
    source: say`ASTM E779, ISO 9972 (from memory)`,
    compute: ({ leak, units }) => ({
      value: leak.coefficient * pressure ** leak.exponent,
      unit: units.flow,
      uncertainty: leak.uncertainty(pressure),
      values: () => `C = ${short(leak.coefficient)} ${units.flow}/Pa^n, n = ${short(leak.exponent)}`,
    }),
    ...more,
  }
}
