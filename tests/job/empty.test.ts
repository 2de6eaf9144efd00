import { describe, expect, test } from 'vitest'
import { emptyDevice, emptyJob, emptyTest, nextRole, today } from '../../lib/job/empty.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import { deviceSchema, jobSchema, testSchema } from '../../lib/job/schema.ts'
import { unitSets } from '../../lib/job/units.ts'

describe('empty', () => {
  test('what is made fits its schema and has an id of its own', () => {
    const job = emptyJob(unitSets.SI)
    expect(jobSchema.parse(job)).toEqual(job)
    const after = emptyTest('after', 'enclosure', unitSets.SI)
    expect(testSchema.parse(after)).toEqual(after)
    const device = emptyDevice('L/s')
    expect(deviceSchema.parse(device)).toEqual(device)
    expect(emptyJob(unitSets.SI).id).not.toBe(job.id)
  })

  test('the tester is copied, so that a later change of the profile leaves the job alone', () => {
    const tester = { ...emptyJob(unitSets.IP).tester, name: 'Ines Halvorsen' }
    const job = emptyJob(unitSets.IP, tester)
    tester.name = 'Someone else'
    expect(job.tester.name).toBe('Ines Halvorsen')
  })

  test('an empty test asks for a reading and nothing else', () => {
    const job = emptyJob(unitSets.IP)
    expect(reduceTest(job, emptyTest('final', 'enclosure', unitSets.IP), [])).toMatchInlineSnapshot(`
      {
        "apart": [],
        "problems": [
          {
            "code": "missing",
            "message": "Readings: nothing typed yet. Type the pressure and the flow of a point.",
            "path": "points.0.pressure",
            "severity": "missing",
          },
        ],
      }
    `)
  })

  test('roles are proposed in the order of the rounds, and never twice', () => {
    const job = emptyJob(unitSets.IP)
    const roles: string[] = []
    for (const subject of ['enclosure', 'enclosure', 'ducts', 'enclosure', 'enclosure', 'ducts'] as const) {
      const role = nextRole(job, subject)
      roles.push(role)
      job.tests.push(emptyTest(role, subject, unitSets.IP))
    }
    expect(roles).toEqual(['before', 'after', 'duct system 1', 'final', 'final 2', 'duct system 2'])
  })

  test('a role typed in capitals counts as used', () => {
    expect(nextRole({ tests: [emptyTest(' Before ', 'enclosure', unitSets.IP)] }, 'enclosure')).toBe('after')
  })

  test('today is the day where the tester stands', () => {
    expect(today(new Date(2026, 1, 1, 23, 59))).toBe('2026-02-01')
  })
})
