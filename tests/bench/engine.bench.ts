/**
 * The engine: one full regression report (validation, figures with limits, checks, working) against least-squares
 * routines that do the fit alone, logarithms included, and against the engine of an earlier commit (BENCH_BEFORE); and
 * 10,000 sheets in a row.
 */
import jstat from 'jstat'
import MultivariateLinearRegression from 'ml-regression-multivariate-linear'
import { linearRegression } from 'simple-statistics'
import { reduce } from '../../lib/reduce/reduce.ts'
import { fakeRegression, wholeBuilding } from '../reduce/sheets.ts'
import { generator } from '../random.ts'
import { engineBefore } from './before.ts'
import type { Row } from './part.ts'

const random = generator(50)
const pressures = [60, 54, 48, 42, 36, 30, 24, 15]

const sheet = () => {
  const leak = 60 + 60 * random()
  return fakeRegression({
    points: pressures.map((pressure) => ({
      pressure: -pressure,
      flow: leak * pressure ** 0.65 * (1 + 0.01 * (random() - 0.5)),
    })),
    baseline: { before: [-1.1, -0.9], after: [-0.8] },
    air: { indoor: 68, outdoor: 41, elevation: 620 },
    building: wholeBuilding,
    weatherShieldingFactor: 0.6,
  })
}

const sheets = Array.from({ length: 512 }, sheet)
const flowsOf = sheets.map(({ points }) => points.map((point) => ('flow' in point ? point.flow : NaN)))

const middle = (list: number[]) => list.toSorted((a, b) => a - b)[list.length >> 1]!
const logs = (values: readonly number[]) => values.map((value) => Math.log(value))

/** Processor time of this process so far in µs: what else the machine does counts little. */
function spent(): number {
  const { user, system } = process.cpuUsage()
  return user + system
}

/** Processor time of one call in µs: the middle of the rounds. The candidates take turns, to be slowed alike. */
function times<Name extends string>(candidates: Record<Name, (index: number) => unknown>): Record<Name, number> {
  const names = Object.keys(candidates) as Name[]
  const rounds: Record<string, number[]> = {}
  const calls = Object.fromEntries(names.map((name) => [name, 1])) as Record<Name, number>
  for (const name of names) {
    // As many calls to a round as take about 10 ms, once compiled.
    for (let call = 0; call < 3000; call++) candidates[name](call % sheets.length)
    const start = spent()
    while (spent() - start < 10_000) candidates[name](calls[name]++ % sheets.length)
  }
  for (let round = 0; round < 40; round++) {
    for (const name of names) {
      const start = spent()
      for (let call = 0; call < calls[name]; call++) candidates[name](call % sheets.length)
      const time = (spent() - start) / calls[name]
      ;(rounds[name] ??= []).push(time)
    }
  }
  return Object.fromEntries(names.map((name) => [name, middle(rounds[name]!)])) as Record<Name, number>
}

function steadiness(): Row[] {
  const all = Array.from({ length: 10_000 }, sheet)
  const marks: number[] = []
  const start = spent()
  all.forEach((one, index) => {
    if (index % 1000 === 0) marks.push(spent())
    reduce(one)
  })
  const end = spent()
  marks.push(end)
  const thousand = marks.slice(1).map((mark, at) => mark - marks[at]!)
  const ratio = thousand.at(-1)! / thousand[0]!
  return [
    { what: '10,000 sheets', value: (end - start) / 1000, unit: 'ms' },
    {
      what: 'last thousand of them / first thousand',
      value: ratio,
      unit: 'x',
      aim: 'not slowing: at most 1.2',
      met: ratio <= 1.2,
    },
  ]
}

const older = (what: string, ratio: number, commit: string): Row => ({
  what: `${what} / full report of the engine at ${commit}`,
  value: ratio,
  unit: 'x',
  aim: 'at most 2',
  met: ratio <= 2,
})

export default async function engine(): Promise<Row[]> {
  const before = await engineBefore()
  const measured = times({
    report: (index) => reduce(sheets[index]!),
    // The working is made when it is read.
    worked: (index) => reduce(sheets[index]!).working,
    // Without an earlier engine nothing is shown of this candidate.
    before: (index) => (before ?? { reduce }).reduce(sheets[index]!),
    multivariate: (index) =>
      new MultivariateLinearRegression(
        pressures.map((pressure) => [Math.log(pressure)]),
        flowsOf[index]!.map((flow) => [Math.log(flow)]),
      ),
    jstat: (index) =>
      jstat.models.ols(
        logs(flowsOf[index]!),
        pressures.map((pressure) => [1, Math.log(pressure)]),
      ),
    simple: (index) =>
      linearRegression(pressures.map((pressure, at) => [Math.log(pressure), Math.log(flowsOf[index]![at]!)])),
  })
  const { report, worked, multivariate, jstat: ols, simple } = measured
  const ratio = (of: number, what: string): Row => ({
    what,
    value: report / of,
    unit: 'x',
    aim: 'at most 10',
    met: report / of <= 10,
  })
  return [
    { what: 'report, 8 points, its working not read', value: report, unit: 'µs', aim: 'under 200', met: report < 200 },
    { what: 'full report: working read', value: worked, unit: 'µs' },
    ...(before
      ? [
          older('full report', worked / measured.before, before.commit),
          older('report, working not read', report / measured.before, before.commit),
        ]
      : []),
    { what: 'jstat ols: matrix fit with tests', value: ols, unit: 'µs' },
    ratio(ols, 'report / jstat ols'),
    { what: 'ml-regression multivariate: matrix fit with standard errors', value: multivariate, unit: 'µs' },
    ratio(multivariate, 'report / ml-regression multivariate'),
    { what: 'simple-statistics linearRegression: two sums, no errors', value: simple, unit: 'µs' },
    { what: 'report / simple-statistics linearRegression', value: report / simple, unit: 'x' },
    ...steadiness(),
  ]
}
