import { expect, test } from 'vitest'
import { emptyZone } from '../../lib/job/empty.ts'
import { unitSets } from '../../lib/job/units.ts'
import { readZone } from '../../lib/job/zones.ts'
import { zoneLines } from '../../lib/results/zone-lines.ts'

const typed = { ...emptyZone(), houseZone: '30', zoneOutdoors: '20' }
const lines = (flows: { closed?: string; opened?: string }, units: 'IP' | 'SI' = 'IP') =>
  zoneLines(readZone({ ...typed, ...flows }, 0, unitSets[units]), 0, unitSets[units].flow).map(
    ({ name, detail, value, unit }) => [name, detail, value, unit].filter(Boolean).join(' '),
  )

/** Conservation of mass: (20 / 30)^0.65 = 0.768; 400 / (50^0.65 − 20^0.65) × 50^0.65 = 891, × 20^0.65 = 491. */
test('the ratio of a zone, and its flows once the house was measured with it opened', () => {
  expect(lines({})).toEqual(['Leak ratio house to zone over zone to outdoors 0.77'])
  expect(lines({ closed: '2000', opened: '2400' })).toEqual([
    'Leak ratio house to zone over zone to outdoors 0.77',
    'House to zone at 50 Pa 685 cfm',
    'Zone to outdoors at 50 Pa 891 cfm',
    'Through the zone at 50 Pa 491 cfm',
  ])
  expect(lines({ closed: '2000', opened: '2400' }, 'SI').at(-1)).toBe('Through the zone at 50 Pa 491 m³/h')
})
