import { flow75 } from './flow-75.ts'
import { perArea } from './per-area.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const flow75PerEnclosureArea = perArea(flow75, 'enclosureArea', {
  id: 'flow-75-per-enclosure-area',
  label: 'qE75',
  labels: { 'cfm/ft2': term`CFM75/ft² of enclosure` },
  name: say`flow at 75 Pa per enclosure area`,
  source: say`IECC commercial provisions (from memory)`,
})
