/** What a test comes to, written for the screen. Everything is computed elsewhere; here it is worded and sorted. */
import { nameOf } from '../job/cells.ts'
import { judge } from '../job/house-limit.ts'
import { takesOnePointFactor } from '../job/one-point-factor.ts'
import type { Problem } from '../job/problem.ts'
import { type ReducedPoint, reduceTest, type ReducedTest } from '../job/reduce.ts'
import type { Device, Job, Test } from '../job/schema.ts'
import { type TestVerdict, verdictOf } from '../job/verdict.ts'
import { baselineOf } from '../reduce/baseline.ts'
import { decimalsOf, usualFlow } from '../reduce/figures/index.ts'
import type { CheckLine, FigureGroup, VerdictProps } from './shown.ts'
import { figureGroups, halfUp, lacking, minus } from './lines.ts'
import { isBlank } from '../job/edits.ts'
import { houseVerdict } from './several-verdict.ts'
import { verdictLines, withheldLines } from './verdict-lines.ts'
import { language, say } from '../words/say.ts'
import { readingInLocale } from './in-locale.ts'
import { wordsAfter } from './words-after.ts'

export interface Reading {
  /** By path: what was found about a typed cell. */
  found: ReadonlyMap<string, string>
  /** Paths in `found` that only wait to be typed: nothing is said of them in the row that is being typed. */
  unfinished: ReadonlySet<string>
  /** By row: the reading brought to the reference pressure, as written. */
  brought: string[]
  /** The row that a one-point result is from. */
  used: number | undefined
  /** Mean baseline as written, or empty. */
  mean: string
  verdict: VerdictProps | undefined
  groups: FigureGroup[]
  lacking: string[]
  checks: CheckLine[]
  counts: { good: number; doubtful: number; bad: number; not: number }
  /** Whether a line was drawn through the readings. */
  fitted: boolean
  /** Which readings the figures stand on. */
  basis: string
  /** Whether the one-point factor is on, for procedures that know it. */
  factor: string
  /** What is still to be typed, while there is nothing to show. */
  waiting: string
}

/** A message as it stands beside its cell, which need not be named again. */
export function besideCell(path: string, message: string): string {
  const name = `${nameOf(path)}: `
  const rest = message.startsWith(name) ? message.slice(name.length) : message
  return rest.charAt(0).toUpperCase() + rest.slice(1)
}

function findings(test: Test, problems: readonly Problem[]): Map<string, string> {
  const blank = test.sheet.points.every(isBlank)
  const found = new Map<string, string>()
  for (const { path, message, beside = message, severity } of problems) {
    // An untouched table needs no remark: the place of the verdict says what to type.
    if (blank && severity === 'missing' && path.startsWith('points')) continue
    // The cells of a device stand in its editor: what is found there is told beside the choice of the device.
    const words = path.startsWith('device.') ? message : besideCell(path, beside)
    const before = found.get(path)
    found.set(path, before ? `${before} ${words}` : words)
  }
  return found
}

const headline = {
  enclosure: ['air-changes-50', 'flow-50'],
  ducts: ['duct-flow-25-per-floor-area', 'duct-flow-25'],
  /** Of a large building. */
  large: ['flow-75-per-enclosure-area', 'flow-75'],
} as const

function verdictFor(
  test: Test,
  { report }: ReducedTest,
  { verdict, withheld, problems }: TestVerdict,
): VerdictProps | undefined {
  if (!report) return undefined
  const asked = (verdict ?? withheld)?.limit.figure
  const { subject, procedure } = test.sheet
  const usual = headline[subject === 'enclosure' && procedure === 'astm-e3158' ? 'large' : subject]
  const id = [asked, ...usual].find((one) => one !== undefined && report.figures[one])
  const found = id === undefined ? undefined : report.figures[id]
  if (id === undefined || !found) return undefined
  if (withheld) return withheldLines(id, found, withheld)
  const notes: string[] = []
  if (test.onePointFactor && takesOnePointFactor(test) && !verdict?.unadjusted) {
    notes.push(say`The one-point result is multiplied by 1.1, in every figure and in what is entered.`)
  }
  if (test.limit !== '' && !verdict) {
    notes.push(...problems.map(({ message }) => message))
    return { ...verdictLines(id, found, undefined, notes), source: '' }
  }
  return verdictLines(id, found, verdict, notes)
}

/** Which readings a result at one or two pressures stands on. */
function basisOf(points: readonly ReducedPoint[], onePoint: boolean, target: number): string {
  const rows = points.filter((point) => point.used).map(({ row }) => row)
  if (rows.length === 0) return ''
  if (rows.length > 1)
    return onePoint ? say`from ${rows.length} points near ${target} Pa` : say`from ${rows.length} points`
  return say`from point ${rows[0]! + 1}, nearest ${target} Pa`
}

const emptyHint = (test: Test): string => {
  const flow = test.sheet.reading !== 'device'
  if (test.sheet.subject === 'ducts') {
    return flow
      ? say`Type the duct pressure and the flow of a point; the figures follow at once.`
      : say`Type the duct pressure and the device pressure and its range of a point; the figures follow at once.`
  }
  return flow
    ? say`Type the house pressure and the flow of a point; the figures follow at once.`
    : say`Type the house pressure and the device pressure and its range of a point; the figures follow at once.`
}

export function readingOf(job: Job, test: Test, devices: readonly Device[]): Reading {
  const reduced = reduceTest(job, test, [...devices])
  const judged = judge(job, test, reduced.report?.figures)
  const reading = wordReading(job, test, reduced, undefined, judged)
  const house = judged.withheld && houseVerdict(job, test, devices)
  return readingInLocale(house ? { ...reading, verdict: house } : reading, language())
}

/**
 * A reduced test in words. `wanted`: the figures that are missed when they are not there; all when left out. `judged`: its
 * verdict, where more is known of the job than this test.
 */
export function wordReading(
  job: Pick<Job, 'units' | 'building'>,
  test: Test,
  reduced: ReducedTest,
  wanted?: (figure: string) => boolean,
  judged: TestVerdict = verdictOf(job, test, reduced.report?.figures),
): Reading {
  const { sheet, report, points = [] } = reduced
  const { limit } = judged
  const problems = [...reduced.problems, ...judged.problems]
  const flowDecimals = decimalsOf(usualFlow(test.sheet.subject), test.units.flow)

  const brought: string[] = []
  for (const { row, atReference } of points) brought[row] = halfUp(atReference, flowDecimals)
  const onePoint = test.sheet.procedure === 'one-point'
  const used = onePoint ? points.find((point) => point.used)?.row : undefined
  const { before, after } = sheet?.baseline ?? { before: [], after: [] }
  const typed = sheet && before.length + after.length > 0
  const checks = report?.checks ?? []
  const count = (outcome: CheckLine['outcome']) => checks.filter((check) => check.outcome === outcome).length
  const target = test.sheet.subject === 'ducts' ? 25 : 50
  const bad = problems.find(({ severity }) => severity === 'bad')

  return inWordsOf(test.sheet.procedure, {
    found: findings(test, problems),
    unfinished: new Set(problems.flatMap(({ path, severity }) => (severity === 'missing' ? [path] : []))),
    brought,
    used,
    mean: typed ? minus(halfUp(baselineOf(sheet.baseline).mean, 1)) : '',
    verdict: verdictFor(test, reduced, judged),
    groups: report ? figureGroups(report, limit) : [],
    lacking: sheet && report ? lacking(sheet, report, wanted) : [],
    checks: checks.toSorted((a, b) => order.indexOf(a.outcome) - order.indexOf(b.outcome)),
    counts: { good: count('good'), doubtful: count('doubtful'), bad: count('bad'), not: count('not checked') },
    fitted: report?.fit !== undefined,
    basis: report?.fit ? say`fit of ${report.fit.points} points` : basisOf(points, onePoint, target),
    factor: takesOnePointFactor(test)
      ? test.onePointFactor
        ? say`multiplied by 1.1`
        : say`not multiplied by 1.1`
      : '',
    waiting: bad?.message ?? problems.find(({ path }) => path === 'points')?.message ?? emptyHint(test),
  })
}

function inWordsOf(procedure: Test['sheet']['procedure'], reading: Reading): Reading {
  if (procedure !== 'iso-9972') return reading
  const inIso = (text: string) => wordsAfter(procedure, text)
  const { verdict, groups, lacking: lacks, checks } = reading
  const worded = (check: CheckLine): CheckLine => ({
    ...check,
    text: inIso(check.text),
    ...(check.found !== undefined && { found: inIso(check.found) }),
    ...(check.expected !== undefined && { expected: inIso(check.expected) }),
  })
  return {
    ...reading,
    verdict: verdict && {
      ...verdict,
      unit: inIso(verdict.unit),
      drawn: inIso(verdict.drawn),
      verdict: verdict.verdict && { ...verdict.verdict, text: inIso(verdict.verdict.text) },
    },
    groups: groups.map(({ title, lines }) => ({
      title,
      lines: lines.map((line) => ({ ...line, name: inIso(line.name), interval: inIso(line.interval) })),
    })),
    lacking: lacks.map(inIso),
    checks: checks.map(worded),
  }
}

const order: readonly CheckLine['outcome'][] = ['bad', 'doubtful', 'good', 'not checked']
