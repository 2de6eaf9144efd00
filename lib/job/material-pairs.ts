/** What tests of a job come to together, as a form can be filled with it. */
import type { Item, Quantity } from '../form/material.ts'
import { decimalsOf } from '../reduce/figures/index.ts'
import type { FigureValue } from '../reduce/report.ts'
import { figureItems } from './material-figures.ts'
import { laterSystemsOf, type KnownTest, severalOf, type Work, worksOf } from './together.ts'
import { term } from '../words/term.ts'

type Items = Record<string, Item>

function quantity(label: string, group: string, value: number, unit: string, decimals: number): Quantity {
  return { kind: 'quantity', label, group, value, unit, decimals }
}

const half = ({ value, high }: FigureValue): number | undefined => (high === undefined ? undefined : high - value)

/** What the work between tests before and tests after brought, with its uncertainty. */
export function reductionItems(tests: readonly KnownTest[]): Items {
  const all: Items = {}
  // The house, which comes first, bears the key that every form map has, whichever two of its tests are compared.
  for (const [at, work] of worksOf(tests).entries())
    Object.assign(
      all,
      at === 0 ? workItems(work, 'before', 'after') : workItems(work, work.before, work.after + ofDucts(work)),
    )
  return all
}

const ofDucts = ({ test }: Work): string => (test.after.sheet.subject === 'ducts' ? ', ducts' : '')

function workItems(work: Work, before: string, after: string): Items {
  const { absolute, percent } = work
  const [group, key] = [`${before} and ${after}`, `${before}+${after}`]
  const label = `reduction of ${work.of}`
  const decimals = decimalsOf(work.figure, absolute.unit)
  const items: Items = {
    [`${key}/reduction`]: quantity(label, group, absolute.value, absolute.unit, decimals),
    [`${key}/reduction-percent`]: quantity(term`reduction in percent`, group, percent.value, '%', 0),
  }
  const [wide, share] = [half(absolute), half(percent)]
  if (wide !== undefined && share !== undefined) {
    items[`${key}/reduction-uncertainty`] = quantity(
      `uncertainty of the ${label}, 95 %`,
      group,
      wide,
      absolute.unit,
      decimals,
    )
    items[`${key}/reduction-percent-uncertainty`] = quantity(
      term`uncertainty of the percentage, 95 %`,
      group,
      share,
      '%',
      1,
    )
  }
  return items
}

/** The means of both directions, and the sum of the duct systems. */
export function severalItems(tests: readonly KnownTest[]): Items {
  const all: Items = {}
  for (const one of [...severalOf(tests), ...laterSystemsOf(tests)]) {
    for (const [id, item] of Object.entries(figureItems(one.name, one.figures, one))) all[`${one.name}/${id}`] = item
  }
  return all
}
