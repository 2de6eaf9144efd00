import { flow4 } from './flow-4.ts'
import { leakageArea } from './leakage-area.ts'
import { say } from '../../words/say.ts'

export const effectiveLeakageArea = leakageArea(flow4, 4, 1, {
  id: 'effective-leakage-area',
  label: 'ELA',
  name: say`effective leakage area, 4 Pa, Cd 1`,
  source: say`ASTM E779, ANSI 301 (from memory)`,
})
