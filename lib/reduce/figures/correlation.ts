import type { Figure } from './figure.ts'

export const correlation: Figure = {
  id: 'correlation',
  label: 'r²',
  name: 'square of the correlation of the fit',
  group: 'test quality',
  decimals: { '1': 4 },
  needs: ['fit'],
  rests: 'on the fit',
  formula: 'r² of ln Q against ln ΔP',
  source: 'ISO 9972 (from memory)',
  compute: ({ leak: { line } }) => ({ value: line!.correlation, unit: '1', values: `${line!.count} points` }),
}
