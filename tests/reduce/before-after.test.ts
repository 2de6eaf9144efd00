/** Two tests of one building, compared: common practice, no source. */
import { expect, test } from 'vitest'
import { beforeAfter } from '../../lib/reduce/before-after.ts'
import { reduce } from '../../lib/reduce/reduce.ts'
import type { Sheet } from '../../lib/sheet/schema.ts'
import { fakeRegression, fakeSheet } from './sheets.ts'

const tested = (sheet: Sheet) => ({ sheet, figures: reduce(sheet).figures })
const leaky = (flow: number, overrides: Partial<Sheet> = {}) =>
  tested(fakeSheet({ points: [{ pressure: -50, flow }], ...overrides }))

const sized = (flow: number, building: Sheet['building'], units = fakeSheet().units) =>
  leaky(flow, { units, ...(building && { building }) })

function said(before: ReturnType<typeof tested>, after: ReturnType<typeof tested>): string | undefined {
  const found = beforeAfter(before, after)
  return found && `${found.outcome}: ${found.text}`
}

test('less than before, as much, more', () => {
  expect(said(leaky(1500), leaky(800))).toMatchInlineSnapshot(
    `"good: It leaks less than before, and both tests were made alike."`,
  )
  expect(said(leaky(1500), leaky(1500.1))).toMatchInlineSnapshot(
    `"doubtful: It leaks more than before. Look for a window, hatch or damper left open, and for a slip in either test."`,
  )
  const shown = leaky(1500, { points: [{ pressure: -50.0001, flow: 1500 }] })
  expect(said(leaky(1500), shown)).toMatch(/^good/)
})

test('the same readings typed twice', () => {
  expect(said(leaky(1500), leaky(1500))).toMatchInlineSnapshot(
    `"bad: The readings are the same as those of the test before. Type what was read after the work."`,
  )
  const range = { ranges: { wide: { coefficient: 100, exponent: 0.5 }, middle: { coefficient: 50, exponent: 0.5 } } }
  const through = (name: string) =>
    tested(fakeSheet({ points: [{ pressure: -50, devicePressure: 64, range: name }], device: range }))
  expect(said(through('wide'), through('wide'))).toMatch(/^bad/)
  expect(said(through('wide'), through('middle'))).toMatch(/^good/)
})

test('sizes that differ, whatever their units', () => {
  expect(said(sized(1500, { volume: 20_000 }), sized(800, { volume: 21_000 }))).toMatchInlineSnapshot(
    `"bad: The volume is another than in the test before. Give both tests the same, or say in the notes what was built."`,
  )
  expect(said(sized(1500, { volume: 20_000 }), sized(800, { volume: 20_100 }))).toMatch(/^good/)
  expect(said(sized(1500, { volume: 20_000 }), sized(800, { floorArea: 2400 }))).toMatch(/^good/)
  const metric = { flow: 'cfm', temperature: 'degC', length: 'm' } as const
  expect(said(sized(1500, { floorArea: 2400 }), sized(800, { floorArea: 222.97 }, metric))).toMatch(/^good/)
  expect(said(sized(1500, { enclosureArea: 2400 }), sized(800, { enclosureArea: 240 }, metric))).toMatch(/^bad/)
})

test('what was not done alike', () => {
  const pressurized = leaky(800, { direction: 'pressurize', points: [{ pressure: 50, flow: 800 }] })
  expect(said(leaky(1500), pressurized)).toMatchInlineSnapshot(
    `"doubtful: The direction is another than in the test before, which may pass for a change of the leaks. Test both alike, or say so in the notes."`,
  )
  expect(said(leaky(1500), tested(fakeRegression()))).toMatchInlineSnapshot(
    `"doubtful: The procedure is another than in the test before, which may pass for a change of the leaks. Test both alike, or say so in the notes."`,
  )
})

test('a house and its ducts are not compared', () => {
  expect(said(leaky(1500), leaky(800, { subject: 'ducts' }))).toBeUndefined()
})
