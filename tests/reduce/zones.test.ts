/** Conservation of mass, worked forwards: a house and a zone of known leaks give pressures and flows; these give the leaks. */
import { expect, test } from 'vitest'
import { zoneLeakage, zonePressures } from '../../lib/reduce/zones.ts'

test('the ratio, by hand: (20/30)^0.65 = 0.76830', () => {
  expect(zonePressures({ houseZone: -30, zoneOutdoors: 20 }).ratio).toBeCloseTo(0.7683, 4)
  expect(zonePressures({ houseZone: 30, zoneOutdoors: 20, exponent: 0.5 }).ratio).toBeCloseTo(Math.sqrt(2 / 3), 12)
})

test('two configurations give the leaks back', () => {
  // House to zone 40, zone to outdoors 60, rest of the house 100 per Pa^0.65. The same air passes both: p2/p1 = (40/60)^(1/0.65).
  const n = 0.65
  const q = (40 / 60) ** (1 / n)
  const [p1, p2] = [50 / (1 + q), (50 * q) / (1 + q)]
  const closed = 100 * 50 ** n + 60 * p2 ** n
  const opened = 100 * 50 ** n + 60 * 50 ** n
  const found = zoneLeakage({ closed, opened, houseZone: p1, zoneOutdoors: p2 })
  expect(found.houseToZone).toBeCloseTo(40, 9)
  expect(found.zoneToOutdoors).toBeCloseTo(60, 9)
  expect(found.throughZoneFlow).toBeCloseTo(40 * p1 ** n, 9)
  expect([found.houseToZoneFlow, found.zoneToOutdoorsFlow].map(Math.round)).toEqual(
    [40 * 50 ** n, 60 * 50 ** n].map(Math.round),
  )
})

test('below 5 Pa it warns', () => {
  expect(zonePressures({ houseZone: 5, zoneOutdoors: 45 }).check.outcome).toBe('good')
  const { outcome, text } = zonePressures({ houseZone: 4.9, zoneOutdoors: 45.1 }).check
  expect(`${outcome}: ${text}`).toMatchInlineSnapshot(
    `"doubtful: A pressure below 5 Pa says little about the leaks: a small error changes the ratio much. Average for longer, or open a path on the other side and measure again."`,
  )
})

test('what cannot be is refused', () => {
  const zone = { closed: 2000, opened: 2400, houseZone: 30, zoneOutdoors: 20 }
  expect(() => zonePressures({ houseZone: 0, zoneOutdoors: 20 })).toThrow('above zero')
  expect(() => zoneLeakage({ ...zone, opened: 2000 })).toThrow('more flow')
  expect(() => zoneLeakage({ ...zone, zoneOutdoors: 50 })).toThrow('below the pressure')
  expect(() => zoneLeakage({ ...zone, closed: NaN })).toThrow('above zero')
})
