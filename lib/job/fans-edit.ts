/** Changes of a test of several fans as typed. Each returns what is new and leaves the old alone. */
import { insertPoint, setPoint, shownRows } from './edits.ts'
import { emptyFan, emptyFanReading } from './empty.ts'
import type { TypedFan, TypedFanReading, TypedPoint, TypedSheet } from './schema.ts'

/** A test to be read with several fans. What was typed of one is the first of two; what stood of several before is there. */
export function asFans(sheet: TypedSheet): Partial<TypedSheet> {
  if (sheet.fans) return { reading: 'fans' }
  const reading = sheet.reading === 'device' ? 'device' : 'flow'
  const points = sheet.points.map((point): TypedPoint => ({
    ...point,
    fans: [{ flow: point.flow, devicePressure: point.devicePressure, range: point.range }],
  }))
  return { reading: 'fans', fans: [{ ...emptyFan(), device: sheet.device, reading }, emptyFan()], points }
}

/** Of every fan what stands in a row; of one without a reading an empty one. */
export const fansIn = ({ fans = [] }: TypedPoint, count: number): TypedFanReading[] =>
  Array.from({ length: count }, (_, at) => fans[at] ?? emptyFanReading())

/** Writes a cell of a fan. A pressure that is typed without a range is in the range of the row above. */
export function setFan(
  points: readonly TypedPoint[],
  row: number,
  fan: number,
  patch: Partial<TypedFanReading>,
): TypedPoint[] {
  const rows = shownRows(points)
  const readings = fansIn(rows[row]!, fan + 1)
  const old = readings[fan]!
  const carried = patch.devicePressure && old.range === '' ? { range: rows[row - 1]?.fans?.[fan]?.range ?? '' } : {}
  const fans = [...(rows[row]!.fans ?? [])]
  for (let at = 0; at < fan; at++) fans[at] ??= emptyFanReading()
  fans[fan] = { ...old, ...carried, ...patch }
  return setPoint(points, row, { fans })
}

/** One fan more, which reads as the last one does. */
export const addFan = (fans: readonly TypedFan[]): TypedFan[] => [
  ...fans,
  { ...emptyFan(), reading: fans.at(-1)?.reading ?? 'flow' },
]

/** A sheet without one of its fans and its readings. */
export const withoutFan = ({ fans = [], points }: TypedSheet, at: number): Partial<TypedSheet> => ({
  fans: fans.toSpliced(at, 1),
  points: points.map((point) => (point.fans ? { ...point, fans: point.fans.toSpliced(at, 1) } : point)),
})

/** Puts pasted rows over the rows from `row` on. */
export function placeFans(points: readonly TypedPoint[], row: number, pasted: readonly TypedPoint[]): TypedPoint[] {
  let placed = [...points]
  for (const [index, one] of pasted.entries()) {
    const old = placed[row + index]
    if (old) placed[row + index] = { ...old, ...one, leftOut: '' }
    else placed = insertPoint(placed, placed.length, one)
  }
  return placed
}
