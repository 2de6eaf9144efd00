/**
 * Typed cells of a zone beside the house. The ratio (p2 / p1)^n and the two-configuration estimate are conservation of
 * mass; numbers by hand beside each check.
 */
import { expect, test } from 'vitest'
import { emptyZone } from '../../lib/job/empty.ts'
import { testSchema, type TypedZone } from '../../lib/job/schema.ts'
import { switchTestUnits, unitSets } from '../../lib/job/units.ts'
import { readZone } from '../../lib/job/zones.ts'
import { fakeTest } from './fake.ts'

const zone = (typed: Partial<TypedZone>): TypedZone => ({
  ...emptyZone(),
  houseZone: '30',
  zoneOutdoors: '20',
  ...typed,
})
const read = (typed: Partial<TypedZone>) => readZone(zone(typed), 0, unitSets.IP)
const messages = (typed: Partial<TypedZone>) => read(typed).problems.map(({ message }) => message)
const outcomes = (typed: Partial<TypedZone>) => read(typed).checks.map(({ id, outcome }) => `${id}: ${outcome}`)

test('a zone without readings says nothing', () => {
  expect(readZone(emptyZone(), 0, unitSets.IP)).toEqual({ problems: [], house: 50, checks: [] })
})

/** (20 / 30)^0.65 = 0.7683; C2 = 400 / (50^0.65 − 20^0.65) = 70.09; × 50^0.65 = 891.3, as is C1 = 53.85 → 684.8. */
test('ratio and flows of the two paths', () => {
  expect(read({}).ratio?.ratio).toBeCloseTo(0.7683, 4)
  expect(read({}).leakage).toBeUndefined()
  const { leakage } = read({ closed: '2,000 cfm', opened: '2400', houseZone: '-30', zoneOutdoors: '-20' })
  expect(leakage?.zoneToOutdoorsFlow).toBeCloseTo(891.3, 1)
  expect(leakage?.houseToZoneFlow).toBeCloseTo(684.8, 1)
  expect(outcomes({})).toEqual(['zone-pressure: good', 'zone-sum: good'])
})

test('small pressures and pressures that do not add up are doubted', () => {
  expect(outcomes({ houseZone: '46', zoneOutdoors: '4' })).toEqual(['zone-pressure: doubtful', 'zone-sum: good'])
  expect(outcomes({ houseZone: '30', zoneOutdoors: '30' })).toEqual(['zone-pressure: good', 'zone-sum: doubtful'])
  expect(outcomes({ houseZone: '30', zoneOutdoors: '30', house: '60' })).toEqual([
    'zone-pressure: good',
    'zone-sum: good',
  ])
})

test('cells that are missing or wrong are named', () => {
  expect([
    messages({ zoneOutdoors: '' }),
    messages({ closed: '2000' }),
    messages({ houseZone: '0', exponent: '2' }),
    messages({ closed: '2400', opened: '2000' }),
    messages({ zoneOutdoors: '55', closed: '2000', opened: '2400' }),
  ]).toMatchInlineSnapshot(`
    [
      [
        "Zone 1, zone to outdoors: nothing typed. Measure it while the house is held at its pressure: the ratio needs both.",
      ],
      [
        "Zone 1, flow with the zone opened: nothing typed. The flows of the paths need both flows; the ratio needs neither.",
      ],
      [
        "Zone 1, house to zone: 0 is not a pressure across house or zone. Type what was read, other than 0, or empty the cell.",
        "Zone 1, exponent n: 2 is not an exponent of leakage. Type a number from 0.5 to 1, or empty the cell.",
      ],
      [
        "Zone 1, flow with the zone opened: Opening the zone must bring more flow: check which flow is which.",
      ],
      [
        "Zone 1, zone to outdoors: The zone must stand below the pressure of the house: check both.",
      ],
    ]
  `)
})

/** NIST SP 811: 1 ft3 = 0.0283168 m3; 2000 cfm = 3398 m3/h. */
test('a test keeps its zones as typed, through a switch of units and back', () => {
  const one = fakeTest({}, { zones: [zone({ name: 'attic', closed: '2000', opened: '2400' })] })
  expect(testSchema.parse(one)).toEqual(one)
  const metric = switchTestUnits(one, unitSets.SI)
  expect(metric.zones?.[0]).toMatchObject({ closed: '3398', opened: '4078', houseZone: '30' })
  expect(switchTestUnits(metric, unitSets.IP).zones).toEqual(one.zones)
  expect('zones' in switchTestUnits(fakeTest(), unitSets.SI)).toBe(false)
})
