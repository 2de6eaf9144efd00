import { flow10 } from './flow-10.ts'
import { leakageArea } from './leakage-area.ts'

export const equivalentLeakageArea = leakageArea(flow10, 10, 0.611, {
  id: 'equivalent-leakage-area',
  label: 'EqLA',
  name: 'equivalent leakage area, 10 Pa, Cd 0.611',
  source: 'CAN/CGSB-149.10 (from memory)',
})
