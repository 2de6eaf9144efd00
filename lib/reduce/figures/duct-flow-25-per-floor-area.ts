import { convert } from '../../units/convert.ts'
import { ductFlow25 } from './duct-flow-25.ts'
import type { Figure } from './figure.ts'
import { perArea } from './per-area.ts'
import { say } from '../../words/say.ts'

const perFloor = perArea(ductFlow25, 'floorArea', {
  id: 'duct-flow-25-per-floor-area',
  label: 'q25',
  labels: { 'cfm/100ft2': 'CFM25/100 ft²', 'cfm/ft2': 'CFM25/ft²' },
  name: say`duct leakage at 25 Pa per floor area`,
  group: 'ducts',
  subject: 'ducts',
  formula: say`q25 = k × Q25 / A, k = 100 in cfm and ft2, else 1`,
  source: say`IECC (from memory)`,
})

export const ductFlow25PerFloorArea: Figure = {
  ...perFloor,
  compute: (context, given) => {
    const computed = perFloor.compute(context, given)
    const hundreds = computed.unit === 'cfm/ft2'
    const values = () => `${computed.values()}, k = ${hundreds ? 100 : 1}`
    if (!hundreds) return { ...computed, values }
    return { ...computed, value: convert(computed.value, 'cfm/ft2', 'cfm/100ft2'), unit: 'cfm/100ft2', values }
  },
}
