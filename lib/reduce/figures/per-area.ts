import type { Units } from '../../sheet/schema.ts'
import { convert } from '../../units/convert.ts'
import { named } from '../say.ts'
import type { Figure, Need } from './figure.ts'

/** The units of a flow and of it per area: feet go with cfm; metres go with m3/h, or with L/s when the flow is in L/s. */
function unitsOf({ length, flow }: Units): [flow: string, perArea: string] {
  if (length === 'ft') return ['cfm', 'cfm/ft2']
  return flow === 'L/s' ? ['L/s', 'L/(s.m2)'] : ['m3/h', 'm3/(h.m2)']
}

/** A flow over an area of the building. */
export function perArea(
  flow: Figure,
  need: Extract<Need, 'floorArea' | 'enclosureArea' | 'enclosureAreaWithoutFloor'>,
  rest: Pick<Figure, 'id' | 'label' | 'name' | 'source'> & Partial<Figure>,
): Figure {
  return {
    group: 'what forms ask',
    subject: 'enclosure',
    decimals: { 'cfm/ft2': 2, 'cfm/100ft2': 1, 'm3/(h.m2)': 2, 'L/(s.m2)': 2 },
    needs: [need],
    formula: `${flow.label} / A`,
    compute: ({ of, units }, given) => {
      const { value, uncertainty, note } = of(flow)
      const [flowUnit, unit] = unitsOf(units)
      const inUnit = convert(value, units.flow, flowUnit)
      return {
        value: inUnit / given[need],
        unit,
        uncertainty,
        sized: true,
        note,
        values: () => named([flow.label, inUnit, flowUnit], ['A', given[need], `${units.length}2`]),
      }
    },
    ...rest,
  }
}
