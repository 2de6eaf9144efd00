import { flow10 } from './flow-10.ts'
import { perArea } from './per-area.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const flow10PerEnclosureArea = perArea(flow10, 'enclosureArea', {
  id: 'flow-10-per-enclosure-area',
  label: 'qE10',
  labels: { 'cfm/ft2': term`CFM10/ft² of enclosure` },
  name: say`flow at 10 Pa per enclosure area`,
  source: say`CAN/CGSB-149.10, ISO 9972 (from memory)`,
  decimals: { 'cfm/ft2': 3, 'm3/(h.m2)': 2, 'L/(s.m2)': 3 },
})
