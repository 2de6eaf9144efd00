import { flow75 } from './flow-75.ts'
import { perArea } from './per-area.ts'

export const flow75PerEnclosureArea = perArea(flow75, 'enclosureArea', {
  id: 'flow-75-per-enclosure-area',
  label: 'qE75',
  labels: { 'cfm/ft2': 'CFM75/ft² of enclosure' },
  name: 'flow at 75 Pa per enclosure area',
  source: 'IECC commercial provisions (from memory)',
})
