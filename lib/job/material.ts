/** Everything of a job that a form can be filled with. */
import type { Item, Material, Quantity } from '../form/material.ts'
import { convert } from '../units/convert.ts'
import { today } from './empty.ts'
import { jobItems, testerItems } from './material-job.ts'
import { testItems } from './material-test.ts'
import { reduceTest } from './reduce.ts'
import type { Device, Job, Test } from './schema.ts'

export interface MaterialSettings {
  /** The day that `today` stands for. */
  now?: Date
}

/** What a job is called in lists: its street, else its permit or program number. */
export function jobName({ building }: Pick<Job, 'building'>): string {
  const names = [building.street, building.permit, building.program, building.town]
  return names.map((name) => name.trim()).find((name) => name !== '') ?? 'Job without an address'
}

/** Roles as keys: as typed, numbered where one is used twice. */
export function roleKeys(tests: Test[]): Map<Test, string> {
  const used = new Set<string>()
  const keys = new Map<Test, string>()
  for (const [at, test] of tests.entries()) {
    const role = test.role.trim() === '' ? `test ${at + 1}` : test.role.trim()
    let key = role
    for (let number = 2; used.has(key); number++) key = `${role} (${number})`
    used.add(key)
    keys.set(test, key)
  }
  return keys
}

/** The figures and fields of a job that are known, by the keys that form maps bind to. */
export function material(job: Job, devices: Device[], settings: MaterialSettings = {}): Material {
  const items: Record<string, Item> = { ...jobItems(job), ...testerItems(job.tester) }
  const keys = roleKeys(job.tests)
  for (const [test, role] of keys) {
    const reduced = reduceTest(job, test, devices)
    for (const [id, item] of Object.entries(testItems(test, role, reduced, devices))) items[`${role}/${id}`] = item
  }
  Object.assign(items, pairItems(items, [...keys.values()]))
  items['today'] = { kind: 'date', label: 'today’s date', group: 'today', iso: today(settings.now) }
  return { job: { id: job.id, name: jobName(job) }, items }
}

/** What the work between a test before and a test after brought. */
function pairItems(items: Record<string, Item>, roles: string[]): Record<string, Item> {
  const named = (role: string) => roles.find((one) => one.toLowerCase() === role)
  const [before, after] = [named('before'), named('after')]
  if (before === undefined || after === undefined) return {}
  const figure = ['flow-50', 'duct-flow-25'].find((id) => `${before}/${id}` in items && `${after}/${id}` in items)
  const [first, last] = [items[`${before}/${figure}`], items[`${after}/${figure}`]]
  if (first?.kind !== 'quantity' || last?.kind !== 'quantity') return {}
  const was = convert(first.value, first.unit, last.unit)
  const group = `${before} and ${after}`
  const reduction: Quantity = {
    kind: 'quantity',
    label: `reduction of ${last.label}`,
    group,
    value: was - last.value,
    unit: last.unit,
    decimals: last.decimals,
  }
  const percent = (100 * (was - last.value)) / was
  return {
    [`${before}+${after}/reduction`]: reduction,
    [`${before}+${after}/reduction-percent`]: {
      kind: 'quantity',
      label: 'reduction in percent',
      group,
      value: percent,
      unit: '%',
      decimals: 0,
    },
  }
}
