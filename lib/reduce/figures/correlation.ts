import type { Figure } from './figure.ts'
import { say } from '../../words/say.ts'

export const correlation: Figure = {
  id: 'correlation',
  label: 'r²',
  name: say`square of the correlation of the fit`,
  group: 'test quality',
  decimals: { '1': 4 },
  needs: ['fit'],
  rests: 'on the fit',
  formula: say`r² of ln Q against ln ΔP`,
  source: say`ISO 9972 (from memory)`,
  compute: ({ leak: { line } }) => ({ value: line!.correlation, unit: '1', values: () => say`${line!.count} points` }),
}
