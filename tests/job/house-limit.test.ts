import { expect, test } from 'vitest'
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { judge } from '../../lib/job/house-limit.ts'
import { material } from '../../lib/job/material.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import type { Job, Test, TypedSheet } from '../../lib/job/schema.ts'
import { together } from '../../lib/job/together.ts'
import { switchUnits, unitSets } from '../../lib/job/units.ts'
import { readingOf } from '../../lib/results/reading.ts'
import { reportOf } from '../../lib/report/content.ts'
import { points } from './fake.ts'

const devices = [demoDevice()]
const still = { baselineBefore: '', baselineAfter: '', indoor: '', outdoor: '' }

function system(number: number, flow: string, sheet: Partial<TypedSheet> = {}, more: Partial<Test> = {}): Test {
  const ducts = demoJob().tests.at(-1)!
  return {
    ...ducts,
    id: `system ${number}`,
    role: `duct system ${number}`,
    stage: 'final',
    ...more,
    sheet: { ...ducts.sheet, ...still, points: points(['25', flow]), ...sheet },
  }
}

function house(...tests: Test[]): Job {
  const job = demoJob()
  return { ...job, building: { ...job.building, floorArea: '2000' }, tests }
}

const judged = (job: Job, at = 0) => {
  const one = job.tests[at]!
  return judge(job, one, reduceTest(job, one, devices).report?.figures)
}

const figure = (of: Record<string, { value: number }> = {}) => of['duct-flow-25-per-floor-area']?.value

// IECC 2021 R403.3.6: total leakage at most 4.0 cfm per 100 ft2 of conditioned floor area. 100 × (50 + 60) / 2000 = 5.5,
// though each system alone, over the whole house or over its own half, comes to 2.5 and 3.0, or 5 and 6.
test('the limit for a house is held against the sum of its systems, wherever one of them is shown', () => {
  const job = house(system(1, '50'), system(2, '60'))
  for (const at of [0, 1]) {
    expect(judged(job, at)).toMatchObject({ withheld: { withheld: expect.stringMatching(/sum of all duct systems/) } })
    const { verdict } = readingOf(job, job.tests[at]!, devices)
    expect(verdict).toMatchObject({ title: 'duct systems', value: '5.5', verdict: { meets: false } })
    const report = reportOf(job, job.tests[at]!, devices, undefined)
    expect(report.verdict?.verdict).toBeUndefined()
    expect(report.verdict?.source).toMatch(/sum of all duct systems/)
    expect(report.several.join()).toMatch(/5\.5 .*Does not meet the limit, 4\.0/)
  }
  const { items } = material(job, devices)
  expect(items['duct system 1/verdict']).toMatchObject({ value: '' })
  expect(items['duct systems/verdict']).toMatchObject({ value: 'fail' })
})

test('while a system is not read there is no verdict, and it is named', () => {
  const job = house(system(1, '50'), system(2, ''))
  expect(judged(job).withheld?.withheld).toMatch(/Not read yet: duct system 2\.$/)
  expect(readingOf(job, job.tests[0]!, devices).verdict?.verdict).toBeUndefined()
})

test('systems with different limits are asked for one', () => {
  const job = house(system(1, '50'), system(2, '60', {}, { limit: 'own', ownLimit: '4' }))
  expect(judged(job).withheld?.withheld).toMatch(/Choose the same limit for all systems\.$/)
})

test('one system alone, another stage or leakage, and the share of an air handler have a verdict of their own', () => {
  expect(judged(house(system(1, '50'))).verdict?.meets).toBe(true)
  expect(judged(house(system(1, '50'), system(2, '60', { ductLeakage: 'outside' }))).verdict?.meets).toBe(true)
  expect(judged(house(system(1, '50'), system(2, '60', {}, { stage: 'rough-in' }))).verdict?.meets).toBe(true)
  const share = { limit: 'own', ownLimit: '5', ownLimitFigure: 'duct-share-of-air-handler' }
  // 50 of 1,050 cfm is 4.8 %.
  expect(judged(house(system(1, '50', {}, share), system(2, '60', {}, share))).verdict?.meets).toBe(true)
})

test('systems of two stages are added up by stage, each under a name of its own', () => {
  const rough = [1, 2].map((number) => system(number, '30', {}, { stage: 'rough-in' }))
  const done = [3, 4].map((number) => system(number, '40'))
  const sums = together(house(...rough, ...done), devices).several
  expect(sums.map(({ name, figures }) => [name, Math.round(figures['duct-flow-25']!.value)])).toEqual([
    ['duct systems, rough-in', 60],
    ['duct systems, final', 80],
  ])
})

test('the area a system serves is what its own figure is set over; the sum is over the house', () => {
  const job = house(system(1, '50', { servedArea: '1,200' }), system(2, '60', { servedArea: '750' }))
  expect(figure(reduceTest(job, job.tests[0]!, devices).report?.figures)).toBeCloseTo((100 * 50) / 1200, 9)
  const [sum] = together(job, devices).several
  expect(figure(sum?.figures)).toBeCloseTo(5.5, 9)
  // 1,950 ft² are 2.5 % off the 2,000 ft² of the house.
  expect(sum?.checks).toMatchObject([{ id: 'areas-served', outcome: 'doubtful' }])
  const untyped = { ...job, building: { ...job.building, floorArea: '' } }
  const [served] = together(untyped, devices).several
  expect(figure(served?.figures)).toBeCloseTo((100 * 110) / 1950, 9)
  expect(served?.checks).toEqual([])
  const metric = switchUnits(job, unitSets.SI)
  // 1,200 ft² are 111.48 m² (NIST SP 811: 1 ft = 0.3048 m).
  expect(Number(metric.tests[0]!.sheet.servedArea)).toBeCloseTo(1200 * 0.3048 ** 2, 1)
  expect(together(metric, devices).several[0]?.checks[0]?.outcome).toBe('doubtful')
  expect(switchUnits(metric, unitSets.IP).tests[0]!.sheet.servedArea).toBe('1,200')
})

test('a limit on Qn is held against the Qn of the sum', () => {
  const qn = { limit: 'own', ownLimit: '0.06', ownLimitFigure: 'duct-qn' }
  const job = house(system(1, '50', {}, qn), system(2, '60', {}, qn))
  const [sum] = together(job, devices).several
  expect(sum?.verdict).toMatchObject({ meets: true })
  expect(sum?.verdict?.value).toBeCloseTo(0.055, 9)
})
