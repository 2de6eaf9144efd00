/** From the typed cells of a test to its report, with every problem said of the cell it is about. */
import { cellName, SheetError, type SheetIssue } from '../reduce/errors.ts'
import { type PointResult, pointsOf } from '../reduce/points.ts'
import { reduceSheet } from '../reduce/reduce.ts'
import type { CheckResult, Report } from '../reduce/report.ts'
import type { Point, Sheet } from '../sheet/schema.ts'
import { nameOf } from './cells.ts'
import { testChecks } from './checks.ts'
import type { Earlier } from './checks/before-after.ts'
import { pairsOf } from './pairs.ts'
import type { Problem } from './problem.ts'
import { readTest } from './read.ts'
import type { Device, Job, Test } from './schema.ts'
import { say } from '../words/say.ts'

/** What a point came to, and the index of its row among the typed ones. */
export type ReducedPoint = PointResult & { row: number }

export interface ReducedTest {
  sheet?: Sheet
  /** Points that the person left out, as far as they can be read: not in the sheet. */
  apart: { row: number; point: Point }[]
  report?: Report
  points?: ReducedPoint[]
  problems: Problem[]
}

/**
 * The report of a test. Rows that cannot be used are left out and named, so that the others still give their figures;
 * without a usable row there is no report.
 */
export function reduceTest(
  job: Pick<Job, 'units' | 'building'> & Partial<Pick<Job, 'tests'>>,
  test: Test,
  devices: Device[],
): ReducedTest {
  const { sheet, rows, apart, problems } = readTest(job, test, devices)
  if (sheet === undefined) return { apart, problems }
  const before = testBefore(job, test, devices)
  try {
    return { ...compute(sheet, rows, test, devices, before, job.tests), apart, problems }
  } catch (error) {
    if (!(error instanceof SheetError)) throw error
    const found = [...problems, ...error.issues.map((issue) => problemOf(issue, sheet, rows))]
    const left = withoutRows(sheet, rows, error.issues)
    if (left === undefined) return { sheet, apart, problems: found }
    try {
      return { ...compute(left.sheet, left.rows, test, devices, before, job.tests), apart, problems: found }
    } catch (second) {
      if (!(second instanceof SheetError)) throw second
      return {
        sheet,
        apart,
        problems: [...found, ...second.issues.map((issue) => problemOf(issue, left.sheet, left.rows))],
      }
    }
  }
}

/** The test before the work that `test` is compared with, when it is one after it. */
function testBefore(
  { units, building, tests = [] }: Pick<Job, 'units' | 'building'> & Partial<Pick<Job, 'tests'>>,
  test: Test,
  devices: Device[],
): Earlier | undefined {
  const now = tests.map((one) => (one.id === test.id ? test : one))
  const before = pairsOf(now).find(({ after }) => after === test)?.before
  if (before === undefined) return undefined
  const { sheet, report } = reduceTest({ units, building }, before, devices)
  return sheet && report && { test: before, sheet, figures: report.figures }
}

function compute(
  sheet: Sheet,
  rows: number[],
  test: Test,
  devices: Device[],
  before: Earlier | undefined,
  tests: readonly Test[] | undefined,
): Required<Omit<ReducedTest, 'problems' | 'apart'>> {
  const options = { onePointFactor: test.onePointFactor, pointNumbers: rows.map((row) => row + 1) }
  const report = reduceSheet(sheet, options)
  const own = testChecks({ test, sheet, figures: report.figures }, devices, before, tests)
  report.checks = inPlace(report.checks, own)
  const found = pointsOf(sheet, options).map((point, at) => Object.assign(point, { row: rows[at] ?? at }))
  return { sheet, report, points: found }
}

/** The checks of a sheet with those of its test: one of the same id in its place, the others after it. */
function inPlace(ofSheet: readonly CheckResult[], ofTest: readonly CheckResult[]): CheckResult[] {
  const same = (id: string) => ofTest.find((one) => one.id === id)
  const known = new Set(ofSheet.map(({ id }) => id))
  return [...ofSheet.map((one) => same(one.id) ?? one), ...ofTest.filter(({ id }) => !known.has(id))]
}

/** The sheet without the rows at fault, when the fault lies in single rows only and others are left. */
function withoutRows(sheet: Sheet, rows: number[], issues: SheetIssue[]): { sheet: Sheet; rows: number[] } | undefined {
  const bad = new Set<number>()
  for (const { path } of issues) {
    const [first, at] = path
    if (first !== 'points' || typeof at !== 'number') return undefined
    bad.add(at)
  }
  const kept = <T>(list: T[]) => list.filter((_, at) => !bad.has(at))
  return bad.size < rows.length ? { sheet: { ...sheet, points: kept(sheet.points) }, rows: kept(rows) } : undefined
}

/** Codes of what is still to be typed, rather than typed wrongly. */
const MISSING = new Set<SheetIssue['code']>(['too few'])

function problemOf(issue: SheetIssue, sheet: Sheet, rows: number[]): Problem {
  if (issue.code === 'mixed signs') return mixedSigns(sheet, rows)
  if (issue.code === 'too many') return tooMany(issue, sheet, rows)
  const path = typedPath(issue.path, rows)
  const named = cellName(issue.path)
  const start = named.charAt(0).toUpperCase() + named.slice(1)
  const rest = issue.message.startsWith(start) ? issue.message.slice(start.length) : undefined
  const left = path.startsWith('points.') ? say` The row is left out until then.` : ''
  return {
    path,
    code: issue.code.replaceAll(' ', '-'),
    severity: MISSING.has(issue.code) ? 'missing' : 'bad',
    message: rest === undefined || path === 'points' ? issue.message : say`${nameOf(path)}: it${rest + left}`,
  }
}

/** The typed cell that a path of the sheet points at. */
function typedPath(path: SheetIssue['path'], rows: number[]): string {
  const [first, second, third] = path
  if (first === 'points' && typeof second === 'number') {
    const point = `points.${rows[second] ?? second}`
    return third === undefined ? point : `${point}.${third}`
  }
  if (first === 'baseline') return second === 'after' ? 'baselineAfter' : 'baselineBefore'
  if (first === 'weatherShieldingFactor' || second === 'elevation') return `building.${second ?? first}`
  if (first === 'building' || first === 'units') return path.join('.')
  if (first === 'averaging') return second === 'baseline' ? 'baselineSeconds' : 'readingSeconds'
  if (first === 'fieldCheck') return `fieldCheck.${String(second ?? 'area')}`
  if (first === 'air' || first === 'instrument' || first === 'duct') return String(second ?? first)
  return String(first ?? 'points')
}

function tooMany(issue: SheetIssue, sheet: Sheet, rows: number[]): Problem {
  const path = typedPath(issue.path, rows)
  const count =
    path === 'points' ? sheet.points.length : Math.max(sheet.baseline.before.length, sheet.baseline.after.length)
  const message = say`${nameOf(path)}: ${count.toLocaleString('en-US')} are too many. Leave at most 5,000, or test in parts.`
  return { path, code: 'too-many', severity: 'bad', message }
}

/** Names the first of the fewer pressures that bear the other sign. */
function mixedSigns(sheet: Sheet, rows: number[]): Problem {
  const minus = sheet.points.map(({ pressure }) => pressure < 0)
  const most = minus.filter(Boolean).length * 2 > minus.length
  const odd = minus.flatMap((negative, at) => (negative === most ? [] : at))
  const [first = 0] = odd
  const path = `points.${rows[first] ?? first}.pressure`
  const sign = most
    ? say`it has no minus sign where others have one.`
    : say`it has a minus sign where others have none.`
  const others = odd.length > 1 ? ` ${say`So have ${odd.length - 1} more.`}` : ''
  return {
    path,
    code: 'mixed-signs',
    severity: 'bad',
    message: `${nameOf(path)}: ${sign}${others} ${say`Give all pressures of a test the same sign.`}`,
  }
}
