import { flow4 } from './flow-4.ts'
import { perArea } from './per-area.ts'
import { term } from '../../words/term.ts'
import { say } from '../../words/say.ts'

export const flow4PerEnclosureAreaWithoutFloor = perArea(flow4, 'enclosureAreaWithoutFloor', {
  id: 'flow-4-per-enclosure-area-without-floor',
  label: term`Q4 per enclosure area without lowest floor`,
  labels: { 'cfm/ft2': term`CFM4/ft² of enclosure without lowest floor` },
  name: say`flow at 4 Pa per enclosure area, without the lowest floor`,
  source: say`French thermal rules, after ISO 9972 (from memory)`,
  decimals: { 'cfm/ft2': 3, 'm3/(h.m2)': 2, 'L/(s.m2)': 3 },
})
