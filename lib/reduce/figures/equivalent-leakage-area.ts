import { flow10 } from './flow-10.ts'
import { leakageArea } from './leakage-area.ts'
import { say } from '../../words/say.ts'

export const equivalentLeakageArea = leakageArea(flow10, 10, 0.611, {
  id: 'equivalent-leakage-area',
  label: 'EqLA',
  name: say`equivalent leakage area, 10 Pa, Cd 0.611`,
  source: say`CAN/CGSB-149.10 (from memory)`,
})
