import { named } from '../say.ts'
import type { Figure } from './figure.ts'

export const leakageExponent: Figure = {
  id: 'leakage-exponent',
  label: 'n',
  name: 'leakage exponent',
  group: 'test quality',
  decimals: { '1': 3 },
  needs: [],
  rests: 'on the fit',
  formula: 'n = slope of ln Q against ln ΔP',
  source: 'ASTM E779, ASTM E1827, ISO 9972 (from memory)',
  compute: ({ leak: { exponent, exponentHalf, line, used } }) => ({
    value: exponent,
    unit: '1',
    low: exponent - exponentHalf,
    high: exponent + exponentHalf,
    note: used === undefined ? undefined : 'Assumed, not measured; limits: twice its standard uncertainty.',
    values: line
      ? named(['points', line.count], ['standard error', line.slopeError])
      : used === undefined
        ? 'the step above'
        : 'assumed for a one-point test',
  }),
}
