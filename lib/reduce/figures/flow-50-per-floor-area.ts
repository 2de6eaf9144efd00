import { flow50 } from './flow-50.ts'
import { perArea } from './per-area.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const flow50PerFloorArea = perArea(flow50, 'floorArea', {
  id: 'flow-50-per-floor-area',
  label: 'qF50',
  labels: { 'cfm/ft2': term`CFM50/ft² of floor` },
  name: say`flow at 50 Pa per floor area`,
  source: say`ISO 9972 (from memory)`,
})
