import { expect, test } from 'vitest'
import { emptyJob, emptyTest, today } from '../../lib/job/empty.ts'
import { asSubject, nextSystem, otherDirection } from '../../lib/job/next-test.ts'
import { together } from '../../lib/job/together.ts'
import { demoJob } from '../../lib/job/demo.ts'
import { unitSets } from '../../lib/job/units.ts'
import { fakeDevices, fakeJob, fakeTest, points } from './fake.ts'

test('the other direction is set up as the first one, has nothing of its readings, and makes a mean with it', () => {
  const first = fakeTest(
    {
      procedure: 'one-point',
      line: 'weighted',
      flowPercent: '4',
      fieldCheck: { area: '9', pressure: '', flow: '', discharge: '' },
    },
    { role: 'final', stage: 'final', notes: 'north door', instrumentFigure: '785', date: '2026-02-11', zones: [] },
  )
  const other = otherDirection(first)
  expect(other).toMatchObject({ role: 'final', stage: 'final', limit: first.limit, notes: '', instrumentFigure: '' })
  expect(other.date).toBe(today())
  expect(other.id).not.toBe(first.id)
  expect(other.zones).toBeUndefined()
  expect(other.sheet).toEqual({
    ...first.sheet,
    fieldCheck: undefined,
    direction: 'pressurize',
    baselineBefore: '',
    baselineAfter: '',
    points: points(['', '']),
  })
  other.sheet.points = points(['50.1', '800'])
  const job = { ...fakeJob(), tests: [first, other] }
  expect(together(job, fakeDevices()).several.map(({ name }) => name)).toEqual(['final, both directions'])
  expect(otherDirection(other).sheet.direction).toBe('depressurize')
})

test('the next duct system is numbered on, and the area and air handler of the last one do not come along', () => {
  const job = demoJob()
  const ducts = job.tests.at(-1)!
  ducts.sheet.servedArea = '900'
  const next = nextSystem(job, ducts)
  expect(next).toMatchObject({ role: 'duct system 2', stage: ducts.stage, limit: ducts.limit })
  expect(next.sheet).toMatchObject({ subject: 'ducts', airHandlerFlow: '', baselineBefore: '', indoor: '68' })
  expect(next.sheet.servedArea).toBeUndefined()
})

test('a first test that turns out to be of ducts is proposed as one, and what was chosen or read stays', () => {
  const blank = emptyTest('before', 'enclosure', unitSets.IP)
  const job = { ...emptyJob(unitSets.IP), tests: [blank] }
  const ducts = asSubject(job, blank, 'ducts')
  expect([ducts.role, ducts.sheet.direction]).toEqual(['duct system 1', 'pressurize'])
  const back = asSubject({ ...job, tests: [ducts] }, ducts, 'enclosure')
  expect([back.role, back.sheet.direction]).toEqual(['before', 'depressurize'])
  const named = { ...blank, role: 'attic trunk', sheet: { ...blank.sheet, points: points(['-25', '71']) } }
  expect(asSubject(job, named, 'ducts')).toMatchObject({ role: 'attic trunk', sheet: { direction: 'depressurize' } })
})
