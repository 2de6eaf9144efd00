import { describe, expect, test } from 'vitest'
import type { Test, TypedSheet } from '../../lib/job/schema.ts'
import { reduceTest } from '../../lib/job/reduce.ts'
import { limitOf, limitsOf, verdictOf } from '../../lib/job/verdict.ts'
import { fakeDevices, fakeJob, fakeTest } from './fake.ts'

function judged(overrides: Partial<Test> = {}, building = {}, sheet: Partial<TypedSheet> = {}) {
  const one = fakeTest(sheet, overrides)
  return verdictOf(one, reduceTest(fakeJob(building), one, fakeDevices()).report?.figures)
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
