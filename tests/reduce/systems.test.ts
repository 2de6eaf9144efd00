import { expect, test } from 'vitest'
import { reduce } from '../../lib/reduce/reduce.ts'
import { sumSystems } from '../../lib/reduce/systems.ts'
import { fakeSheet } from './sheets.ts'

const system = (flow: number, airHandlerFlow?: number) =>
  reduce(
    fakeSheet({
      subject: 'ducts',
      direction: 'pressurize',
      points: [{ pressure: 25, flow }],
      building: { floorArea: 2000 },
      duct: { leakage: 'total', ...(airHandlerFlow !== undefined && { airHandlerFlow }) },
    }),
  )

test('by hand: 50 and 30 cfm, air handlers of 800 and 400 cfm, 2,000 ft2: 80 cfm, 4 per 100 ft2, 6.67 %', () => {
  const sum = sumSystems([system(50, 800), system(30, 400)], {
    floorArea: { value: 2000, unit: 'ft2' },
    names: ['upstairs', 'downstairs'],
  })
  expect(sum.figures['duct-flow-25']?.value).toBeCloseTo(80, 9)
  expect(sum.figures['duct-flow-25-per-floor-area']?.value).toBeCloseTo(4, 9)
  expect(sum.figures['duct-flow-25-per-floor-area']?.unit).toBe('cfm/100ft2')
  expect(sum.figures['duct-share-of-air-handler']?.value).toBeCloseTo(20 / 3, 9)
  expect(sum.rows.map(({ name, figures }) => [name, figures['duct-flow-25']?.value])).toEqual([
    ['upstairs', 50],
    ['downstairs', 30],
  ])
  expect(sum.working[0]?.values).toBe('“upstairs”: 50; “downstairs”: 30')
})

test('limits add up, since one instrument read both', () => {
  const [one, other] = [system(50), system(30)]
  const { low, high } = sumSystems([one, other]).figures['duct-flow-25']!
  expect(low).toBeCloseTo(one.figures['duct-flow-25']!.low! + other.figures['duct-flow-25']!.low!, 9)
  expect(high).toBeCloseTo(one.figures['duct-flow-25']!.high! + other.figures['duct-flow-25']!.high!, 9)
})

/** JCGM 100 (the GUM), 5.1.2: independent parts add in quadrature. By hand: √(3² + 4²) = 5. */
test('the uncertainty of the area widens what is set over it, and nothing else', () => {
  const report = { figures: { 'duct-flow-25': { value: 100, unit: 'cfm', low: 97, high: 103 } } }
  const area = { value: 2000, unit: 'ft2' } as const
  const [exact, known] = [area, { ...area, percent: 4 }].map((floorArea) => sumSystems([report], { floorArea }).figures)
  expect(known!['duct-flow-25']).toEqual(exact!['duct-flow-25'])
  const { low, high, note } = known!['duct-flow-25-per-floor-area']!
  expect([low, high]).toEqual([expect.closeTo(4.75, 9), expect.closeTo(5.25, 9)])
  expect(note).toContain('± 4 %')
})

test('metric area; figures only where all is known', () => {
  const sum = sumSystems([system(50, 800), system(30)], { floorArea: { value: 185.80608, unit: 'm2' } })
  expect(sum.figures['duct-flow-25-per-floor-area']?.value).toBeCloseTo((80 * 1.699010796) / 185.80608, 9)
  expect(sum.figures).not.toHaveProperty('duct-share-of-air-handler')
})

test('no report, an enclosure, or no area is refused', () => {
  expect(() => sumSystems([])).toThrow('report of ducts')
  expect(() => sumSystems([reduce(fakeSheet())])).toThrow('report of ducts')
  expect(() => sumSystems([system(50)], { floorArea: { value: 0, unit: 'ft2' } })).toThrow('above zero')
})
