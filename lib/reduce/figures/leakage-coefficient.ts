import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

export const leakageCoefficient: Figure = {
  id: 'leakage-coefficient',
  label: 'C',
  name: say`leakage coefficient at standard conditions`,
  group: 'test quality',
  decimals: { 'cfm/Pa^n': 1, 'm3/h/Pa^n': 1, 'L/s/Pa^n': 2 },
  needs: [],
  formula: say`C = Cleak × standard factor`,
  source: say`ASTM E779, ISO 9972 (from memory)`,
  compute: ({ leak, units }) => ({
    value: leak.coefficient,
    unit: `${units.flow}/Pa^n`,
    uncertainty: leak.uncertainty(1),
    values: () =>
      named(['Cleak', leak.coefficient / leak.standard, `${units.flow}/Pa^n`], [say`standard factor`, leak.standard]),
  }),
}
