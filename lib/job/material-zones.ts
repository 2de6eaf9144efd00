/** What the zones beside the house come to, as a form can be filled with it. */
import type { Item } from '../form/material.ts'
import { decimalsOf } from '../reduce/figures/index.ts'
import { marksIn } from '../units/comma.ts'
import { known, quantityItem } from './material-job.ts'
import type { Test } from './schema.ts'
import { readZone } from './zones.ts'
import { term } from '../words/term.ts'

/**
 * By whole key: `after, attic/zone-ratio`. A zone is known by its name, so that what one job has of its attic never goes
 * where another form asks for a garage.
 */
export function zoneItems({ zones = [], units }: Test, role: string): Record<string, Item> {
  const items: Record<string, Item> = {}
  const used = new Set<string>()
  for (const [at, typed] of zones.entries()) {
    const name = typed.name.trim().toLowerCase().replaceAll('/', ' ') || `zone ${at + 1}`
    let group = `${role}, ${name}`
    for (let number = 2; used.has(group); number++) group = `${role}, ${name} ${number}`
    used.add(group)
    const { ratio, leakage, house } = readZone(typed, at, units)
    if (!ratio) continue
    const number = (label: string, value: number | undefined, unit: string, decimals: number): Item | undefined =>
      value === undefined ? undefined : { kind: 'quantity', label, group, value, unit, decimals }
    const flow = (label: string, value: number | undefined) =>
      number(label, value, units.flow, decimalsOf('flow-50', units.flow))
    const pressure = (label: string, field: 'houseZone' | 'zoneOutdoors') =>
      quantityItem(label, group, `zones.${at}.${field}`, typed[field], 'Pa', marksIn(units))
    const found = known({
      'zone-house': number(term`house-to-outdoors pressure`, house, 'Pa', 0),
      'zone-house-pressure': pressure(term`house-to-zone pressure`, 'houseZone'),
      'zone-outdoors-pressure': pressure(term`zone-to-outdoors pressure`, 'zoneOutdoors'),
      'zone-ratio': number(term`leak ratio, house to zone over zone to outdoors`, ratio.ratio, '1', 2),
      'zone-house-leakage': flow(term`house-to-zone leakage`, leakage?.houseToZoneFlow),
      'zone-outdoors-leakage': flow(term`zone-to-outdoors leakage`, leakage?.zoneToOutdoorsFlow),
      'zone-through-leakage': flow(term`leakage through the zone`, leakage?.throughZoneFlow),
    })
    for (const [id, item] of Object.entries(found)) items[`${group}/${id}`] = item
  }
  return items
}
