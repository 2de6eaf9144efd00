import { describe, expect, test } from 'vitest'
import type { Test, TypedSheet } from '../../lib/job/schema.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import { limitOf, limitsOf, verdictOf } from '../../lib/job/verdict.ts'
import { material } from '../../lib/job/material.ts'
import { textOf } from '../../lib/form/fill/text.ts'
import { readingOf } from '../../lib/results/reading.ts'
import { reportOf } from '../../lib/report/content.ts'
import { fakeDevices, fakeJob, fakeTest } from './fake.ts'

function judged(overrides: Partial<Test> = {}, building = {}, sheet: Partial<TypedSheet> = {}) {
  const one = fakeTest(sheet, overrides)
  const job = fakeJob(building)
  return verdictOf(job, one, reduceTest(job, one, fakeDevices()).report?.figures)
}

const said = ({ problems }: { problems: { path: string; message: string }[] }) =>
  problems.map(({ path, message }) => `${path} ${message}`)

describe('the verdict of a test', () => {
  test('the published limit it was compared with', () => {
    const { limit, verdict, problems } = judged()
    expect(problems).toEqual([])
    expect(limit?.clause).toBe('R402.4.1.3')
    expect(verdict?.meets).toBe(true)
    expect(verdict?.guarded).toBe('between')
    // JCGM 106: Phi((3.0 - 2.860) / (0.175 / 2)) = Phi(1.59) = 0.944.
    expect(verdict?.probability).toBeCloseTo(0.943, 2)
  })

  test('the factor of 1.1 counts', () => {
    expect(judged({ onePointFactor: true }).verdict?.meets).toBe(false)
  })

  test('an own limit, on the usual figure or on another', () => {
    expect(judged({ limit: 'own', ownLimit: '2.5' }).verdict?.meets).toBe(false)
    const perArea = judged({ limit: 'own', ownLimit: '0,25', ownLimitFigure: 'flow-50-per-enclosure-area' })
    expect([perArea.limit?.value, perArea.limit?.unit, perArea.verdict?.meets]).toEqual([0.25, 'cfm/ft2', true])
  })

  test('an own limit in metric units meets the same house', () => {
    const units = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
    const { limit, verdict } = judged(
      { units, limit: 'own', ownLimit: '5', ownLimitFigure: 'flow-50-per-enclosure-area' },
      {},
      { indoor: '20', outdoor: '5' },
    )
    expect(limit?.unit).toBe('m3/(h.m2)')
    expect(verdict?.value).toBeCloseTo(753.72 / (4420 * 0.09290304), 1)
  })

  test('no limit is no problem', () => {
    expect(judged({ limit: '' })).toEqual({ problems: [] })
  })

  test('what is missing or wrong', () => {
    expect(said(judged({ limit: 'own', ownLimit: '' }))).toMatchInlineSnapshot(`
      [
        "ownLimit Own limit: nothing typed. Type the number that the permit or program gives, or choose another limit.",
      ]
    `)
    expect(said(judged({ limit: 'own', ownLimit: '0' }))).toMatchInlineSnapshot(`
      [
        "ownLimit Own limit: 0 is not a limit. Type a number above 0, or empty the cell.",
      ]
    `)
    expect(said(judged({ limit: 'iecc-1066' }))).toMatchInlineSnapshot(`
      [
        "limit Limit: “iecc-1066” is not among the limits known here. Choose another.",
      ]
    `)
    expect(said(judged({ limit: 'iecc-2021-ducts-total' }))).toMatchInlineSnapshot(`
      [
        "limit Limit: “iecc-2021-ducts-total” is no limit of an enclosure. Choose another.",
      ]
    `)
    expect(said(judged({}, { volume: '' }))).toMatchInlineSnapshot(`
      [
        "building.volume Volume: ACH50 needs it for the verdict. Type the volume, or choose a limit on another figure.",
      ]
    `)
  })

  test('the picker offers limits of the subject and the zone', () => {
    const offered = limitsOf(fakeJob({ climateZone: '5A' }), fakeTest())
    expect(offered.length).toBeGreaterThan(2)
    expect(
      offered.every(({ subject, climateZones }) => subject === 'enclosure' && (climateZones?.includes(5) ?? true)),
    ).toBe(true)
    expect(limitOf(fakeTest({}, { limit: offered[0]?.id ?? '' })).limit).toEqual(offered[0])
  })
})

/** A duct test in a building of 2,000 ft2, against the limit of total leakage of finished work. */
function ducts(sheet: Partial<TypedSheet>, overrides: Partial<Test>) {
  const one = fakeTest(
    {
      subject: 'ducts',
      procedure: 'one-point',
      direction: 'pressurize',
      reading: 'flow',
      baselineBefore: '0',
      baselineAfter: '0',
      points: [{ pressure: '25.0', flow: '60', devicePressure: '', range: '' }],
      indoor: '',
      outdoor: '',
      device: '',
      ...sheet,
    },
    { role: 'duct system 1', limit: 'iecc-2021-ducts-total', ...overrides },
  )
  const job = { ...fakeJob({ floorArea: '2,000' }), tests: [one] }
  const found = verdictOf(job, one, reduceTest(job, one, fakeDevices()).report?.figures)
  return { job, one, found, items: material(job, fakeDevices()).items }
}

describe('a limit that is not for the test gives no verdict, anywhere', () => {
  test('leakage to outside against the limit of total leakage: seen to meet it', () => {
    const { found, items, job, one } = ducts({ ductLeakage: 'outside' }, { stage: 'final' })
    expect(found.verdict).toBeUndefined()
    expect(found.limit).toBeUndefined()
    expect(found.withheld?.withheld).toContain('is for total leakage; this test is of leakage to outside.')
    expect(items['duct system 1/verdict']).toMatchObject({ value: '', why: found.withheld?.withheld })
    const bound = { from: 'item', item: 'duct system 1/verdict', write: {} } as const
    expect(textOf(bound, material(job, fakeDevices()), { kind: 'text', options: [] })).toEqual({
      refused: found.withheld?.withheld,
    })
    const shown = readingOf(job, one, fakeDevices()).verdict
    expect(shown?.verdict).toBeUndefined()
    expect(shown?.interval?.limit).toBeUndefined()
    expect(shown?.source).toBe(found.withheld?.withheld)
    const report = reportOf(job, one, fakeDevices(), undefined)
    expect(report.limitHead).toBe('Limit: not for this test')
    expect(report.verdict?.source).toContain('No verdict.')
    expect(limitsOf(job, one).map(({ id }) => id)).toEqual(['iecc-2009-ducts-outside'])
  })

  test('rough-in without air handler against the limit of finished work', () => {
    const { found } = ducts({}, { stage: 'rough-in without air handler' })
    expect(found.withheld?.instead?.id).toBe('iecc-2021-ducts-rough-in-without-air-handler')
  })

  test('zone 5A against the limit of zones 0 to 2', () => {
    const { withheld } = judged({ limit: 'iecc-2021-air-changes-prescriptive-zones-0-2' }, { climateZone: '5A' })
    expect(withheld?.withheld).toContain('is for zones 0 to 2; this test is of zone 5.')
  })

  test('without a zone the verdict stands on that condition, and its sentence says so', () => {
    const one = fakeTest()
    const job = fakeJob({ climateZone: '' })
    const { verdict } = verdictOf(job, one, reduceTest(job, one, fakeDevices()).report?.figures)
    expect(verdict?.unsaid).toEqual(['zones 3 to 8'])
    const notes = readingOf(job, one, fakeDevices()).verdict?.notes.join(' ')
    expect(notes).toContain('The verdict holds only for zones 3 to 8')
  })

  test('80 cfm at 25.0 Pa in 2,000 ft² is 4.0: it meets the limit, and the form gets pass', () => {
    const points = [{ pressure: '25.0', flow: '80', devicePressure: '', range: '' }]
    const { found, items, job, one } = ducts({ points }, { stage: 'final' })
    expect(found.verdict).toMatchObject({ meets: true, value: 4 })
    expect(items['duct system 1/verdict']).toMatchObject({ value: 'pass' })
    expect(items['duct system 1/duct-flow-25-per-floor-area']).toMatchObject({ value: 4, limit: 4 })
    const shown = readingOf(job, one, fakeDevices())
    expect(shown.verdict?.verdict?.text).toBe('Meets the limit, 4.0 cfm/100 ft²')
    const texts = JSON.stringify([shown.verdict, reportOf(job, one, fakeDevices(), undefined)], (_, value: unknown) =>
      typeof value === 'number' ? undefined : value,
    )
    expect(texts).not.toMatch(/\d\.\d*(0{8}|9{8})/)
  })
})

test('the list of limits follows the units that a house is measured in, as long as one is left', () => {
  const units = { ft: fakeTest().units, m: { flow: 'm3/h', temperature: 'degC', length: 'm' } } as const
  const job = fakeJob({ climateZone: '' })
  const offered = (length: 'ft' | 'm', sheet: Partial<TypedSheet> = { procedure: 'iso-9972' }) =>
    limitsOf(job, fakeTest(sheet, { units: units[length] })).map(({ unit }) => unit)
  expect(offered('ft')).toContain('cfm/ft2')
  expect(offered('ft').filter((unit) => unit.includes('m2'))).toEqual([])
  expect(offered('m')).toContain('m3/(h.m2)')
  expect(offered('m').filter((unit) => unit.includes('ft2'))).toEqual([])
  expect(offered('m', { subject: 'ducts', ductLeakage: 'total' })).toContain('cfm/100ft2')
})
