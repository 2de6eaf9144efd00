/** Everything of a job that a form can be filled with. */
import type { Item, Material } from '../form/material.ts'
import { today } from './empty.ts'
import { jobItems, testerItems } from './material-job.ts'
import { directionItems, type KnownTest, reductionItems, systemItems } from './material-pairs.ts'
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
  const known: KnownTest[] = []
  for (const [test, key] of roleKeys(job.tests)) {
    const reduced = reduceTest(job, test, devices)
    known.push({ test, key, reduced })
    for (const [id, item] of Object.entries(testItems(test, key, reduced, devices))) items[`${key}/${id}`] = item
  }
  Object.assign(items, directionItems(known), reductionItems(known), systemItems(known))
  items['today'] = { kind: 'date', label: 'today’s date', group: 'today', iso: today(settings.now) }
  return { job: { id: job.id, name: jobName(job) }, items }
}
