import { flow50 } from './flow-50.ts'
import { perArea } from './per-area.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const flow50PerEnclosureArea = perArea(flow50, 'enclosureArea', {
  id: 'flow-50-per-enclosure-area',
  label: 'qE50',
  labels: { 'cfm/ft2': term`CFM50/ft² of enclosure` },
  name: say`flow at 50 Pa per enclosure area`,
  source: say`IECC, ISO 9972 (from memory)`,
})
