/** What tests of a job come to together: before and after, one test in both directions, several duct systems. */
import type { Item, Quantity } from '../form/material.ts'
import { combine } from '../reduce/combine.ts'
import { decimalsOf, labelOf } from '../reduce/figures/index.ts'
import { reduction } from '../reduce/reduction.ts'
import type { FigureValue, Report } from '../reduce/report.ts'
import { sumSystems } from '../reduce/systems.ts'
import { usualInstrument } from '../reduce/uncertainty.ts'
import type { ReducedTest } from './reduce.ts'
import type { Test } from './schema.ts'

type Items = Record<string, Item>

/** A test of the job with the key of its role and what it came to. */
export interface KnownTest {
  test: Test
  key: string
  reduced: ReducedTest
}

const RESULTS = ['flow-50', 'duct-flow-25']

/** The share that both tests owe to the calibration of the one device that was used for both. */
function shared(one: KnownTest, other: KnownTest): number {
  if (one.test.sheet.device === '' || one.test.sheet.device !== other.test.sheet.device) return 0
  const percents = [one, other].map(({ reduced }) => (reduced.sheet?.instrument ?? usualInstrument).flowPercent)
  return Math.min(...percents) / 100
}

function quantity(label: string, group: string, value: number, unit: string, decimals: number): Quantity {
  return { kind: 'quantity', label, group, value, unit, decimals }
}

const half = ({ value, high }: FigureValue): number | undefined => (high === undefined ? undefined : high - value)

/** What the work between a test before and a test after brought, with its uncertainty. */
export function reductionItems(tests: readonly KnownTest[]): Items {
  const named = (role: string) => tests.find(({ key }) => key.toLowerCase() === role)
  const [before, after] = [named('before'), named('after')]
  if (before === undefined || after === undefined) return {}
  const figure = (known: KnownTest, id: string) => known.reduced.report?.figures[id]
  const id = RESULTS.find((one) => figure(before, one) && figure(after, one) && subjectOf(before) === subjectOf(after))
  if (id === undefined) return {}
  const last = figure(after, id)!
  const { absolute, percent } = reduction(figure(before, id)!, last, { shared: shared(before, after) })
  const [group, key] = [`${before.key} and ${after.key}`, `${before.key}+${after.key}`]
  const label = `reduction of ${labelOf(id, last.unit)}`
  const decimals = decimalsOf(id, last.unit)
  const items: Items = {
    [`${key}/reduction`]: quantity(label, group, absolute.value, absolute.unit, decimals),
    [`${key}/reduction-percent`]: quantity('reduction in percent', group, percent.value, '%', 0),
  }
  const [wide, share] = [half(absolute), half(percent)]
  if (wide !== undefined && share !== undefined) {
    items[`${key}/reduction-uncertainty`] = quantity(
      `uncertainty of the ${label}, 95 %`,
      group,
      wide,
      last.unit,
      decimals,
    )
    items[`${key}/reduction-percent-uncertainty`] = quantity(
      'uncertainty of the percentage, 95 %',
      group,
      share,
      '%',
      1,
    )
  }
  return items
}

const subjectOf = ({ test }: KnownTest) => test.sheet.subject

/** The mean of two tests that bear one role and were made in opposite directions. */
export function directionItems(tests: readonly KnownTest[]): Items {
  const items: Items = {}
  for (const known of tests) {
    const role = known.test.role.trim()
    const same = tests.filter(({ test }) => test.role.trim() === role && test.sheet.subject === 'enclosure')
    const [first, second] = same
    if (role === '' || same.length !== 2 || first !== known || !second) continue
    if (first.test.sheet.direction === second.test.sheet.direction) continue
    const [one, other] = [first.reduced.report, second.reduced.report]
    if (!one || !other) continue
    const group = `${role}, both directions`
    const reports = first.test.sheet.direction === 'depressurize' ? ([one, other] as const) : ([other, one] as const)
    Object.assign(items, figureItems(group, combine(...reports).figures))
  }
  return items
}

function figureItems(group: string, figures: Report['figures']): Items {
  const entries = Object.entries(figures).map(([id, { value, unit }]): [string, Item] => [
    `${group}/${id}`,
    quantity(labelOf(id, unit), group, value, unit, decimalsOf(id, unit)),
  ])
  return Object.fromEntries(entries)
}

/** Several systems of ducts, tested for the same leakage at the same stage, as one over the floor area of the building. */
export function systemItems(tests: readonly KnownTest[]): Items {
  const systems = tests.filter(({ test, key }) => test.sheet.subject === 'ducts' && /^duct system \d/i.test(key))
  const reports = systems.flatMap(({ reduced }) => reduced.report ?? [])
  const kinds = new Set(systems.map(({ test }) => `${test.sheet.ductLeakage} ${test.stage}`))
  const [first] = systems
  if (!first || reports.length < 2 || reports.length < systems.length || kinds.size > 1) return {}
  const area = first.reduced.sheet?.building?.floorArea
  const unit = first.test.units.length === 'ft' ? 'ft2' : 'm2'
  const floorArea = area === undefined ? undefined : ({ value: area, unit } as const)
  return figureItems('duct systems', sumSystems(reports, { floorArea, names: systems.map(({ key }) => key) }).figures)
}
