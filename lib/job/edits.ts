/** Changes of a job as typed. Each returns a new job and leaves the old one alone. */
import { emptyPoint } from './empty.ts'
import type { Job, Test, TypedPoint, TypedSheet } from './schema.ts'

export function editTest(job: Job, id: string, change: (test: Test) => Test): Job {
  return { ...job, tests: job.tests.map((test) => (test.id === id ? change(test) : test)) }
}

export function editSheet(
  job: Job,
  id: string,
  patch: Partial<TypedSheet> | ((now: TypedSheet) => Partial<TypedSheet>),
): Job {
  return editTest(job, id, (test) => ({
    ...test,
    sheet: { ...test.sheet, ...(typeof patch === 'function' ? patch(test.sheet) : patch) },
  }))
}

export const isBlank = (point: TypedPoint): boolean =>
  point.pressure === '' &&
  point.flow === '' &&
  point.devicePressure === '' &&
  !point.fans?.some((fan) => fan.flow + fan.devicePressure !== '')

/** Whether a procedure fits a line through several points. */
export const isRegression = ({ procedure }: Pick<TypedSheet, 'procedure'>): boolean =>
  procedure !== 'one-point' && procedure !== 'two-point'

/** The rows as shown: always one blank row to type on at the end. */
export function shownRows(points: readonly TypedPoint[]): readonly TypedPoint[] {
  const last = points.at(-1)
  return last && isBlank(last) ? points : [...points, { ...emptyPoint(), range: last?.range ?? '' }]
}

/** Writes a cell; a row beyond the end is added, in the range of the row above it. */
export function setPoint(points: readonly TypedPoint[], row: number, patch: Partial<TypedPoint>): TypedPoint[] {
  const rows = [...shownRows(points)]
  const old = rows[row]
  if (!old) return rows
  rows[row] = { ...old, ...patch }
  const trailing = rows.at(-1)
  return trailing && isBlank(trailing) && rows.length > Math.max(points.length, row + 1) ? rows.slice(0, -1) : rows
}

/** Whether a row can be taken away: the blank one that waits for the next point cannot. */
export function isDeletable(points: readonly TypedPoint[], row: number): boolean {
  const point = points[row]
  return point !== undefined && !(row === points.length - 1 && isBlank(point))
}

export function removePoint(points: readonly TypedPoint[], row: number): TypedPoint[] {
  return points.filter((_, index) => index !== row)
}

export function insertPoint(points: readonly TypedPoint[], row: number, point: TypedPoint): TypedPoint[] {
  return points.toSpliced(row, 0, point)
}

/** The test to show after the one with this id has gone: its neighbour. */
export function neighbour(tests: readonly Test[], id: string): string {
  const index = tests.findIndex((test) => test.id === id)
  return (tests[index + 1] ?? tests[index - 1])?.id ?? ''
}

/** A copy of a job as a new one, with its tests, under new ids. */
export function duplicateJob(job: Job): Job {
  const now = new Date().toISOString()
  const { demo: _, ...rest } = structuredClone(job)
  return {
    ...rest,
    id: crypto.randomUUID(),
    created: now,
    updated: now,
    copied: true,
    tests: rest.tests.map((test) => Object.assign(test, { id: crypto.randomUUID() })),
  }
}
