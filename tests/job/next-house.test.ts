import { expect, test } from 'vitest'
import { demoJob } from '../../lib/job/demo.ts'
import { today } from '../../lib/job/empty.ts'
import { nextHouse } from '../../lib/job/next-house.ts'
import type { Job } from '../../lib/job/schema.ts'
import { duplicateJob } from '../../lib/job/edits.ts'
import { jobTitle } from '../../lib/job/job-title.ts'
import { toldApart } from '../../lib/job/told-apart.ts'

/** A day's first house: the house and its ducts, set up by hand, with all that can be typed. */
function firstHouse(): Job {
  const job = demoJob()
  job.tests = job.tests.slice(1)
  for (const one of job.tests) {
    Object.assign(one, { date: '2026-02-11', notes: 'north door sealed', wind: 'windy' })
    Object.assign(one.sheet, {
      reading: 'device',
      flowPercent: '4',
      pressurePercent: '0.9',
      corrections: 'threshold',
      barometer: '99000',
    })
  }
  return job
}

test('the next house keeps the set-up of each test and nothing that was read or written of the last one', () => {
  const last = firstHouse()
  const next = nextHouse(last)
  expect(next.id).not.toBe(last.id)
  expect(next.demo).toBeUndefined()
  expect(next.building).toEqual({
    ...Object.fromEntries(Object.keys(last.building).map((key) => [key, ''])),
    climateZone: '5A',
  })
  expect(next.tester).toEqual(last.tester)
  expect(next.tests.map(({ role, date, stage, limit }) => ({ role, date, stage, limit }))).toEqual(
    last.tests.map(({ role, stage, limit }) => ({ role, date: today(), stage, limit })),
  )
  for (const [at, { id, notes, wind, instrumentFigure, sheet }] of next.tests.entries()) {
    const before = last.tests[at]!
    expect(id).not.toBe(before.id)
    expect([notes, wind, instrumentFigure]).toEqual(['', '', ''])
    expect(sheet.points).toEqual([{ pressure: '', flow: '', devicePressure: '', range: '' }])
    const read = ['baselineBefore', 'baselineAfter', 'indoor', 'outdoor', 'barometer', 'airHandlerFlow'] as const
    expect(read.map((key) => sheet[key])).toEqual(read.map(() => ''))
    const set = [
      'subject',
      'procedure',
      'direction',
      'reading',
      'device',
      'flowPercent',
      'pressurePercent',
      'corrections',
    ] as const
    expect(set.map((key) => sheet[key])).toEqual(set.map((key) => before.sheet[key]))
  }
})

test('a test that was made after the work is not set up for a house that was not seen yet', () => {
  expect(nextHouse(demoJob()).tests.map(({ role }) => role)).toEqual(['before'])
})

test('a copy says that it is one, and jobs of one address are told apart', () => {
  const job = demoJob()
  const copy = duplicateJob(job)
  expect(jobTitle(copy)).toMatch(/^Copy, not changed yet: 14 Tannery Row/)
  const other = { ...job, id: 'other', created: '2026-03-01T10:00:00.000Z' }
  expect([...toldApart([job, other, copy]).keys()]).toEqual([job.id, 'other'])
  expect(new Set(toldApart([job, other]).values()).size).toBe(2)
  expect(toldApart([job, copy]).size).toBe(0)
})

test('the next house keeps what a kept limit is written for', () => {
  const last = firstHouse()
  const taken = {
    limit: 'own',
    ownLimit: '2.5',
    ownLimitOrigin: 'Larch County 2026',
    ownLimitTerms: { climateZones: [5] },
  }
  Object.assign(last.tests[0]!, taken)
  expect(nextHouse(last).tests[0]).toMatchObject(taken)
})
