import { expect, test } from 'vitest'
import { reduceTest } from '../../lib/job/reduce.ts'
import type { TypedPoint, TypedSheet } from '../../lib/job/schema.ts'
import { curveOf } from '../../lib/reduce/curve.ts'
import { fakeDevices, fakeJob, fakeTest, points } from './fake.ts'

const rows = points(
  ['-60.6', '872'],
  ['-50.9', '793'],
  ['-44.8', '71'],
  ['-39.1', '652'],
  ['-32.6', '576'],
  ['-20.7', '430'],
)
const reduced = (changed: TypedPoint[]) => {
  const sheet: Partial<TypedSheet> = { procedure: 'astm-e779', points: changed }
  return reduceTest(fakeJob(), fakeTest(sheet), fakeDevices())
}
const without = (reason: string) => rows.map((point, row) => (row === 2 ? { ...point, leftOut: reason } : point))

test('a point left out with a reason is not reduced: the figures are those of the other rows alone', () => {
  const { report, points: kept } = reduced(without('a hose came off'))
  const alone = reduced(rows.filter((_, row) => row !== 2)).report
  expect(report?.fit).toEqual(alone?.fit)
  expect(report?.figures['flow-50']?.value).toBe(alone?.figures['flow-50']?.value)
  expect(kept?.map(({ row }) => row)).toEqual([0, 1, 3, 4, 5])
})

test('without a reason nothing is left out', () => {
  for (const reason of ['', '   ']) expect(reduced(without(reason)).report?.fit?.points).toBe(6)
})

test('it stands beside the curve that it does not move, as far from it as it is', () => {
  const { sheet, apart } = reduced(without('a hose came off'))
  expect(apart.map(({ row }) => row)).toEqual([2])
  const curve = curveOf(
    sheet!,
    {},
    apart.map(({ point }) => point),
  )
  expect(curve.points).toHaveLength(5)
  // 71 was typed where about 705 belongs.
  expect(curve.apart[0]!.off).toBeGreaterThan(-91)
  expect(curve.apart[0]!.off).toBeLessThan(-89)
  // Baseline -1.0 Pa is subtracted from it as from the others.
  expect(curve.apart[0]!.pressure).toBeCloseTo(43.8, 10)
})

test('nothing is asked of its cells, and a test of which every point is left out says so', () => {
  const half = rows.map((point, row) => (row === 2 ? { ...point, flow: 'about 70', leftOut: 'unreadable' } : point))
  expect(reduced(half).problems).toEqual([])
  expect(reduced(half).apart).toEqual([])
  const none = reduced(rows.map((point) => Object.assign({}, point, { leftOut: 'wrong house' })))
  expect(none.report).toBeUndefined()
  expect(none.problems.map(({ message }) => message)).toEqual([
    'Readings: every point is left out. Take one back, or read another.',
  ])
})
