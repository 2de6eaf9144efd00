/** What tests of a job come to together: before and after, one test in both directions, several duct systems. */
import type { Verdict, Withheld } from '../limits/index.ts'
import { combine } from '../reduce/combine.ts'
import { labelOf } from '../reduce/figures/index.ts'
import { type Reduction, reduction } from '../reduce/reduction.ts'
import type { CheckResult, FigureValue, Report } from '../reduce/report.ts'
import { sumSystems } from '../reduce/systems.ts'
import { usualInstrument } from '../reduce/uncertainty.ts'
import { type Pair, pairsOf } from './pairs.ts'
import { reduceTest, type ReducedTest } from './reduce.ts'
import { roleKeys } from './roles.ts'
import type { Device, Job, Test } from './schema.ts'
import { limitOf, verdictOf } from './verdict.ts'

/** A test of the job with the key of its role and what it came to. */
export interface KnownTest {
  test: Test
  /** What its building is. */
  of: Pick<Job, 'building' | 'units'>
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
  const systems = systemsOf(known)
  return [...directionsOf(known), ...(systems ? [systems] : [])]
}

const RESULTS = { enclosure: 'flow-50', ducts: 'duct-flow-25' } as const

/** The share that both tests owe to the calibration of the one device that was used for both. */
function shared(one: KnownTest, other: KnownTest): number {
  if (one.test.sheet.device === '' || one.test.sheet.device !== other.test.sheet.device) return 0
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

const ductSystems = (tests: readonly KnownTest[]): KnownTest[] =>
  tests.filter((known) => subjectOf(known) === 'ducts' && /^duct system \d/i.test(known.key))

/** Several systems of ducts, tested for the same leakage at the same stage, as one over the floor area of the building. */
function systemsOf(tests: readonly KnownTest[]): Several | undefined {
  const systems = ductSystems(tests)
  const reports = systems.flatMap(({ reduced }) => reduced.report ?? [])
  const kinds = new Set(systems.map(({ test }) => `${test.sheet.ductLeakage} ${test.stage}`))
  const [first] = systems
  if (!first || reports.length < 2 || reports.length < systems.length || kinds.size > 1) return undefined
  const { floorArea: area, volumePercent: percent } = first.reduced.sheet?.building ?? {}
  const unit = first.test.units.length === 'ft' ? 'ft2' : 'm2'
  const floorArea = area === undefined ? undefined : ({ value: area, unit, percent } as const)
  const names = systems.map(({ key }) => key)
  return asOne('duct systems', systems, { checks: [], ...sumSystems(reports, { floorArea, names }) })
}

/** For forms with few rows: the systems from the second on as one, from the third on, and so forth. */
export function laterSystemsOf(tests: readonly KnownTest[]): Several[] {
  if (!systemsOf(tests)) return []
  const systems = ductSystems(tests)
  return systems.slice(1, -1).map((_, index) => {
    const from = systems.slice(index + 1)
    const reports = from.flatMap(({ reduced }) => reduced.report ?? [])
    const sum = sumSystems(reports, { names: from.map(({ key }) => key) })
    return asOne(`duct systems from ${index + 2}`, from, { checks: [], ...sum })
  })
}
