/** Whether a result, and the sizes of a building, can be true: common practice, no source. */
import { describe, expect, test } from 'vitest'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { said } from './said.ts'
import { fakeSheet } from './sheets.ts'

const ofFlow = (flow: number, building: Sheet['building'] = { volume: 20_000, floorArea: 2400 }) =>
  said('plausibility', fakeSheet({ points: [{ pressure: -50, flow }], ...(building && { building }) }))

const ofShare = (airHandlerFlow?: number) =>
  said(
    'plausibility',
    fakeSheet({ subject: 'ducts', duct: { leakage: 'total', ...(airHandlerFlow && { airHandlerFlow }) } }),
  )

const ofRatio = (volume: number, floorArea: number) =>
  said('volume-floor-area', fakeSheet({ building: { volume, floorArea } }))

describe('plausibility', () => {
  test('air changes typed as a flow, 150-fold, are bad', () => {
    expect(ofFlow(1000)).toMatch(/^good/)
    expect(ofFlow(3)).toMatchInlineSnapshot(
      `"bad: 0.009 ACH50 is tighter than anything built. Check flow and volume and their units. Were air changes typed as a flow? They differ about 150-fold."`,
    )
    expect(said('plausibility', fakeSheet({ points: [{ pressure: -50, flow: 3 }] }))).toMatchInlineSnapshot(
      `"doubtful: 3 cfm is very little for a building. Were air changes typed as a flow? They differ about 150-fold."`,
    )
  })

  test('a house just inside what is plausible is good, and one just outside is not', () => {
    // 20,000 ft3: 0.05 ACH50 are 16.67 cfm, 60 are 20,000 cfm.
    expect(ofFlow(16.7)).toMatch(/^good/)
    expect(ofFlow(16.6)).toMatch(/^bad/)
    expect(ofFlow(20_000)).toMatch(/^good/)
    expect(ofFlow(20_001)).toMatch(/^bad/)
  })

  test('a volume typed in the other unit, 35-fold, is told', () => {
    expect(ofFlow(1000, { volume: 566 })).toMatchInlineSnapshot(
      `"bad: 106 ACH50 is leakier than a building can be. Check flow and volume and their units. Was the volume typed in m3? They differ 35-fold."`,
    )
    const metric = { flow: 'm3/h', temperature: 'degC', length: 'm' } as const
    const typed = { units: metric, points: [{ pressure: -50, flow: 600 }], building: { volume: 20_000 } }
    expect(said('plausibility', fakeSheet(typed))).toMatchInlineSnapshot(
      `"bad: 0.03 ACH50 is tighter than anything built. Check flow and volume and their units. Was the volume typed in ft3? They differ 35-fold."`,
    )
  })

  test('a ceiling that follows from volume and floor area and is none is told', () => {
    expect(ofRatio(19_200, 2400)).toMatch(/^good/)
    expect(ofRatio(2400, 2400)).toMatchInlineSnapshot(
      `"doubtful: Volume over floor area is 1 ft; a ceiling is 7 to 15 ft. Check both numbers and their units."`,
    )
    expect([16_800, 36_000].map((volume) => ofRatio(volume, 2400))).toEqual([
      expect.stringMatching(/^good/),
      expect.stringMatching(/^good/),
    ])
    expect([16_799, 36_001].map((volume) => ofRatio(volume, 2400))).toEqual([
      expect.stringMatching(/^doubtful/),
      expect.stringMatching(/^doubtful/),
    ])
    expect(said('volume-floor-area', fakeSheet())).toMatch(/^not checked/)
  })

  test('ducts that leak more than the air handler moves are bad', () => {
    expect(ofShare()).toMatch(/^not checked/)
    expect(ofShare(1200)).toMatch(/^good/)
    expect(ofShare(400)).toMatch(/^bad/)
  })
})
