/** What was typed where a decimal comma is written means the same in every window and on every computer. */
import { describe, expect, test } from 'vitest'
import { emptyJob, emptyTest } from '../../lib/job/empty.ts'
import { material } from '../../lib/job/material.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import { readRanges } from '../../lib/job/ranges.ts'
import type { Job } from '../../lib/job/schema.ts'
import { switchUnits, typedWithComma, unitSets } from '../../lib/job/units.ts'
import { verdictOf } from '../../lib/job/verdict.ts'
import { reportOf } from '../../lib/report/content.ts'
import { fakeDevices, points } from './fake.ts'

/** A house in metres whose volume was typed as `1.234`: 1,234 m3 to one reader, a little more than 1 m3 to another. */
function house(): Job {
  const job = emptyJob(unitSets.SI)
  const one = emptyTest('before', 'enclosure', job.units)
  const sheet = { ...one.sheet, points: points(['50', '1000']) }
  return {
    ...job,
    building: { ...job.building, volume: '1.234' },
    tests: [{ ...one, sheet, ownLimit: '1.500', limit: 'own' }],
  }
}

const found = (job: Job) => {
  const [one] = job.tests
  const reduced = reduceTest(job, one!, [])
  return { one: one!, reduced, figures: reduced.report?.figures ?? {} }
}

describe('once a person who writes a decimal comma has typed', () => {
  const job = typedWithComma(house())
  const { one, reduced, figures } = found(job)

  test('a number that can be read two ways gives no figure, and is asked about', () => {
    expect(figures['flow-50']?.value).toBeCloseTo(1000)
    expect(figures['air-changes-50']).toBeUndefined()
    expect(reduced.problems.map(({ path, code }) => [path, code])).toContainEqual(['building.volume', 'two-ways'])
    expect(verdictOf(job, one, figures).problems.map(({ code }) => code)).toContain('two-ways')
  })

  test('no report and no form item holds it', () => {
    const report = reportOf(job, one, [], undefined)
    expect(report.figures.map(({ id }) => id)).not.toContain('air-changes-50')
    expect(report.waiting).toContain('“1.234” can be read two ways')
    expect(Object.keys(material(job, []).items)).not.toContain('job/volume')
  })

  test('it stays so in other units, and in a copy that another computer reads', () => {
    const there = JSON.parse(JSON.stringify(switchUnits(job, unitSets.IP))) as Job
    expect(there.building.volume).toBe('1.234')
    expect(found(there).figures['air-changes-50']).toBeUndefined()
  })
})

test('where nobody did, a point is a decimal mark', () => {
  // 1,000 m3/h through a house of 1.234 m3.
  expect(found(house()).figures['air-changes-50']?.value).toBeCloseTo(1000 / 1.234, 6)
})

test('a device that was typed so is asked about, too', () => {
  const [device] = fakeDevices()
  const [range] = device!.ranges
  const typed = { ...device!, ranges: [{ ...range!, coefficient: '1.020' }] }
  const used = new Set([range!.name])
  const read = (decimal?: 'comma') => readRanges({ ...typed, ...(decimal && { decimal }) }, unitSets.IP, used)
  expect(read().ranges[range!.name]?.coefficient).toBeCloseTo(1.02)
  expect(read('comma').problems.map(({ code }) => code)).toContain('two-ways')
})

test('a form item of a point has the decimal mark of its row', () => {
  const job = house()
  const [one] = job.tests
  const sheet = { ...one!.sheet, points: points(['50,2', '1.020']) }
  const { items } = material({ ...job, tests: [{ ...one!, sheet }] }, [])
  const values = Object.values(items).flatMap((item) =>
    item?.kind === 'quantity' && item.unit === 'm3/h' ? item.value : [],
  )
  expect(values).toContain(1020)
  expect(values).not.toContain(1.02)
})
