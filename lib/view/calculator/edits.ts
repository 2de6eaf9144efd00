/** Changes of a job as typed. Each returns a new job and leaves the old one alone. */
import { emptyPoint } from '../../job/empty.ts'
import type { Job, Test, TypedPoint, TypedSheet } from '../../job/schema.ts'

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
  point.pressure === '' && point.flow === '' && point.devicePressure === ''

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

const sameRole = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase()

/** The direction of a new test with this role: the one that an enclosure was not tested in yet under the same role. */
export function directionFor(job: Job, role: string, { sheet }: Test): TypedSheet['direction'] {
  const same = job.tests.find((test) => sameRole(test.role, role))
  if (sheet.subject !== 'enclosure' || same?.sheet.subject !== 'enclosure') return sheet.direction
  return same.sheet.direction === 'depressurize' ? 'pressurize' : 'depressurize'
}

/** Why a role cannot be used for a test, or an empty string. One role may stand for both directions of an enclosure. */
export function roleProblem(
  job: Job,
  id: string,
  role: string,
  sheet: Pick<TypedSheet, 'subject' | 'direction'>,
): string {
  if (role.trim() === '') return 'Give the test a role, for example before or after.'
  const same = job.tests.filter((test) => test.id !== id && sameRole(test.role, role))
  const other = same[0]?.sheet
  const both = same.length === 1 && other?.subject === 'enclosure' && sheet.subject === 'enclosure'
  if (both && other.direction !== sheet.direction) return ''
  return other ? `This job already has a test “${role.trim()}”. Give this one another role.` : ''
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
    tests: rest.tests.map((test) => Object.assign(test, { id: crypto.randomUUID() })),
  }
}
