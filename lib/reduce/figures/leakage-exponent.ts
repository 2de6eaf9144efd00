import { named } from '../say.ts'
import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

export const leakageExponent: Figure = {
  id: 'leakage-exponent',
  label: 'n',
  name: say`leakage exponent`,
  group: 'test quality',
  decimals: { '1': 3 },
  needs: [],
  rests: 'on the fit',
  formula: say`n = slope of ln Q against ln ΔP`,
  source: say`ASTM E779, ASTM E1827, ISO 9972 (from memory)`,
  compute: ({ leak: { exponent, exponentUncertainty, line, assumed } }) => ({
    value: exponent,
    unit: '1',
    uncertainty: exponentUncertainty,
    absolute: true,
    note: assumed ? say`Assumed, not measured; limits: twice its standard uncertainty.` : undefined,
    values: () =>
      line
        ? named(['points', line.count], [say`standard error`, line.slopeError])
        : assumed
          ? say`assumed for a one-point test`
          : say`the step above`,
  }),
}
