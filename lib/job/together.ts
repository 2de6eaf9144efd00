/** What tests of a job come to together: before and after, one test in both directions, several duct systems. */
import { devicesIn } from './devices-in.ts'
import type { Verdict, Withheld } from '../limits/index.ts'
import { combine } from '../reduce/combine.ts'
import { labelOf } from '../reduce/figures/index.ts'
import { type Reduction, reduction } from '../reduce/reduction.ts'
import type { CheckResult, FigureValue, Report } from '../reduce/report.ts'
import { sumSystems } from '../reduce/systems.ts'
import { usualInstrument } from '../reduce/uncertainty.ts'
import { marksIn } from '../units/comma.ts'
import { convert } from '../units/convert.ts'
import { symbol } from '../units/symbol.ts'
import { say } from '../words/say.ts'
import { cellValue, unitAt } from './cells.ts'
import { isSystem, kindOf } from './house-limit.ts'
import { type Pair, pairsOf } from './pairs.ts'
import { reduceTest, type ReducedTest } from './reduce.ts'
import { roleKeys } from './roles.ts'
import type { Device, Job, Test } from './schema.ts'
import { limitOf, verdictOf } from './verdict.ts'

/** A test of the job with the key of its role and what it came to. */
export interface KnownTest {
  test: Test
  /** What its building is. */
  of: Pick<Job, 'building' | 'units' | 'tests'>
  key: string
  reduced: ReducedTest
}

/** Figures of several tests as one. */
export interface Several {
  /** `before and after`, `final, both directions`, `duct systems` */
  name: string
  figures: Report['figures']
  working: Report['working']
  checks: CheckResult[]
  /** Against the limit of the tests, where they have one and the same. */
  verdict?: Verdict
  /** Why there is none: that limit is not for them. */
  withheld?: Withheld
  tests: Test[]
}

/** What two tests do not have in common, so that the numbers are to be compared with care. */
type Differing = 'direction' | 'procedure' | 'stage'

export interface Work extends Reduction {
  test: Pair
  differ: Differing[]
  before: string
  after: string
  /** What it is a reduction of: `CFM50`. */
  of: string
  /** The figure of the registry. */
  figure: string
  /** The figure before and after, each in the unit of its test. */
  was: FigureValue
  is: FigureValue
}

export interface Together {
  /** The house first, then the ducts. */
  works: Work[]
  /** Each role that was tested in both directions, then the duct systems. */
  several: Several[]
}

export const knownTests = (job: Job, devices: Device[]): KnownTest[] =>
  [...roleKeys(job.tests)].map(([test, key]) => ({ test, of: job, key, reduced: reduceTest(job, test, devices) }))

export function together(job: Job, devices: Device[]): Together {
  const known = knownTests(job, devices)
  return { works: worksOf(known), several: severalOf(known) }
}

/** Each role that was tested in both directions, then the duct systems. */
export function severalOf(known: readonly KnownTest[]): Several[] {
  return [...directionsOf(known), ...systemsOf(known)]
}

const RESULTS = { enclosure: 'flow-50', ducts: 'duct-flow-25' } as const

/** The share that both tests owe to the calibration of the one device that was used for both. */
function shared(one: KnownTest, other: KnownTest): number {
  const [ones, others] = [one, other].map(({ test }) => devicesIn(test.sheet).toSorted().join(' '))
  if (ones === '' || ones !== others) return 0
  const percents = [one, other].map(({ reduced }) => (reduced.sheet?.instrument ?? usualInstrument).flowPercent)
  return Math.min(...percents) / 100
}

const subjectOf = ({ test }: KnownTest) => test.sheet.subject

/** What the work between tests before and tests after brought, with its uncertainty; of each two that belong together. */
export function worksOf(tests: readonly KnownTest[]): Work[] {
  return pairsOf(tests.map(({ test }) => test)).flatMap((pair) => workOf(pair, tests) ?? [])
}

function workOf(pair: Pair, tests: readonly KnownTest[]): Work | undefined {
  const [before, after] = [pair.before, pair.after].map((one) => tests.find(({ test }) => test === one))
  if (before === undefined || after === undefined) return undefined
  const figure = (known: KnownTest, id: string) => known.reduced.report?.figures[id]
  const id = RESULTS[subjectOf(after)]
  if (!figure(before, id) || !figure(after, id)) return undefined
  const [was, is] = [figure(before, id)!, figure(after, id)!]
  const brought = reduction(was, is, { shared: shared(before, after) })
  const [one, other] = [before.test, after.test]
  const differ: Differing[] = [
    ...(['direction', 'procedure'] as const).filter((name) => one.sheet[name] !== other.sheet[name]),
    ...(subjectOf(after) === 'ducts' && one.stage !== other.stage ? (['stage'] as const) : []),
  ]
  return {
    test: pair,
    differ,
    before: before.key,
    after: after.key,
    of: labelOf(id, is.unit),
    figure: id,
    was,
    is,
    ...brought,
  }
}

/** Figures of several tests under one name, compared with the limit that the tests have in common. */
function asOne(
  name: string,
  known: readonly KnownTest[],
  { figures, working, checks }: Pick<Several, 'figures' | 'working' | 'checks'>,
  mean = false,
): Several {
  const tests = known.map(({ test }) => test)
  const limits = new Set(tests.map((test) => JSON.stringify(limitOf(test).limit)))
  const [first] = known
  const { verdict, withheld } = first && limits.size === 1 ? verdictOf(first.of, first.test, figures, mean) : {}
  return { name, figures, working, checks, tests, ...(verdict && { verdict }), ...(withheld && { withheld }) }
}

/** The mean of two tests that bear one role and were made in opposite directions. */
function directionsOf(tests: readonly KnownTest[]): Several[] {
  return tests.flatMap((known) => {
    const role = known.test.role.trim()
    const alike = ({ test }: KnownTest) => test.role.trim().toLowerCase() === role.toLowerCase()
    const same = tests.filter((other) => alike(other) && subjectOf(other) === 'enclosure')
    const [first, second] = same
    if (role === '' || same.length !== 2 || first !== known || !second) return []
    if (first.test.sheet.direction === second.test.sheet.direction) return []
    const [one, other] = [first.reduced.report, second.reduced.report]
    if (!one || !other) return []
    const reports = first.test.sheet.direction === 'depressurize' ? ([one, other] as const) : ([other, one] as const)
    return asOne(`${role}, both directions`, same, combine(...reports), true)
  })
}

/** Systems of ducts that were tested for the same leakage at the same stage, each kind by itself. */
function systemKinds(tests: readonly KnownTest[]): KnownTest[][] {
  const kinds = new Map<string, KnownTest[]>()
  for (const known of tests.filter(({ test }) => isSystem(test)))
    kinds.set(kindOf(known.test), [...(kinds.get(kindOf(known.test)) ?? []), known])
  return [...kinds.values()].filter((systems) => systems.length > 1)
}

/** A typed area in the unit of the test. */
function areaIn(text: string, path: string, units: Job['units'], to: string): number | undefined {
  const unit = unitAt(path, units)
  const { value } = cellValue(text, path, unit, { marks: marksIn(units) })
  return value === undefined ? undefined : convert(value, unit, to)
}

/** The floor area of the house; where it is not typed, the areas that the systems serve, added up. */
function floorAreaOf(systems: readonly KnownTest[], to: 'ft2' | 'm2') {
  const [{ of, reduced }] = systems as [KnownTest]
  const whole = areaIn(of.building.floorArea, 'building.floorArea', of.units, to)
  const served = systems.flatMap(({ test }) => areaIn(test.sheet.servedArea ?? '', 'servedArea', test.units, to) ?? [])
  const sum = served.length < systems.length ? undefined : served.reduce((all, area) => all + area, 0)
  const value = whole ?? sum
  return {
    floorArea: value === undefined ? undefined : { value, unit: to, percent: reduced.sheet?.building?.volumePercent },
    checks: whole === undefined || sum === undefined ? [] : [areaCheck(whole, sum, to)],
  }
}

/** How far the areas served may be off the floor area of the house: common practice, no source. */
const areaShare = 0.02

function areaCheck(whole: number, sum: number, unit: string): CheckResult {
  const [served, house] = [sum, whole].map((area) => `${Math.round(area).toLocaleString('en-US')} ${symbol(unit)}`)
  const good = Math.abs(sum - whole) <= areaShare * whole
  return {
    id: 'areas-served',
    outcome: good ? 'good' : 'doubtful',
    text: good
      ? say`The systems serve ${served ?? ''} together, as large as the house.`
      : say`The systems serve ${served ?? ''} together, but the floor area of the house is ${house ?? ''}, over which the sum is set. Look which is right.`,
  }
}

/** Qn of the sum, which is the flow per floor area in other units. */
function qnOf({ 'duct-flow-25-per-floor-area': found }: Report['figures']): Report['figures'] {
  if (!found) return {}
  const { value, low, high, unit } = found
  const qn = (one: number) => convert(one, unit, 'cfm/ft2')
  const ends = low === undefined || high === undefined ? {} : { low: qn(low), high: qn(high) }
  return { 'duct-qn': { ...found, value: qn(value), ...ends, unit: 'cfm/ft2' } }
}

/** Several systems of ducts of one kind as one over the floor area of the building; not while one of them is missing. */
function systemsOf(tests: readonly KnownTest[]): Several[] {
  const kinds = systemKinds(tests)
  const [one] = kinds
  const differ = (of: (test: Test) => string) => new Set(kinds.map(([known]) => of(known!.test))).size > 1
  const name = ({ sheet, stage }: Test) =>
    [
      'duct systems',
      differ((test) => test.sheet.ductLeakage) && sheet.ductLeakage,
      differ((test) => test.stage) && stage,
    ]
      .filter(Boolean)
      .join(', ')
  return kinds.flatMap((systems) => {
    const reports = systems.flatMap(({ reduced }) => reduced.report ?? [])
    const [first] = systems
    if (!first || !one || reports.length < systems.length) return []
    const { floorArea, checks } = floorAreaOf(systems, first.test.units.length === 'ft' ? 'ft2' : 'm2')
    const names = systems.map(({ key }) => key)
    const sum = sumSystems(reports, { floorArea, names })
    const qn = limitOf(first.test).limit?.figure === 'duct-qn' ? qnOf(sum.figures) : {}
    return asOne(name(first.test), systems, { checks, ...sum, figures: { ...sum.figures, ...qn } })
  })
}

/** For forms with few rows: the systems from the second on as one, from the third on, and so forth. */
export function laterSystemsOf(tests: readonly KnownTest[]): Several[] {
  const [systems = [], ...others] = systemKinds(tests)
  if (others.length > 0 || systems.some(({ reduced }) => !reduced.report)) return []
  return systems.slice(1, -1).map((_, index) => {
    const from = systems.slice(index + 1)
    const reports = from.flatMap(({ reduced }) => reduced.report ?? [])
    const sum = sumSystems(reports, { names: from.map(({ key }) => key) })
    return asOne(`duct systems from ${index + 2}`, from, { checks: [], ...sum })
  })
}
