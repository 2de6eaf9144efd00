/** Everything of a job that a form can be filled with. */
import type { Item, Material, ReadyFile } from '../form/material.ts'
import { devicesIn } from './devices-in.ts'
import { today } from './empty.ts'
import { jobItems, testerItems } from './material-job.ts'
import { reductionItems, severalItems } from './material-pairs.ts'
import { testItems } from './material-test.ts'
import { zoneItems } from './material-zones.ts'
import './with-fans.ts'
import type { Device, Job } from './schema.ts'
import { knownTests } from './together.ts'
import { say } from '../words/say.ts'
import { term } from '../words/term.ts'

export interface MaterialSettings {
  /** The day that `today` stands for. */
  now?: Date
}

/** What a job is called in lists: its street, else its permit or program number. */
export function jobName({ building }: Pick<Job, 'building'>): string {
  const names = [building.street, building.permit, building.program, building.town]
  return names.map((name) => name.trim()).find((name) => name !== '') ?? say`Job without an address`
}

/** The figures and fields of a job that are known, by the keys that form maps bind to. */
export function material(job: Job, devices: Device[], settings: MaterialSettings = {}): Material {
  const items: Record<string, Item> = { ...jobItems(job), ...testerItems(job.tester) }
  const known = knownTests(job, devices)
  for (const one of known) {
    for (const [id, item] of Object.entries(testItems(one, devices))) items[`${one.key}/${id}`] = item
  }
  for (const { test, key } of known) Object.assign(items, zoneItems(test, key))
  Object.assign(items, severalItems(known), reductionItems(known))
  items['today'] = { kind: 'date', label: term`today’s date`, group: term`today`, iso: today(settings.now) }
  const files = reportFiles(known.map(({ key }) => key))
  return { job: { id: job.id, name: jobName(job) }, items, files }
}

/**
 * The same with the job and its devices, for the entry of a fill: readings may be typed on, and a range may be changed,
 * while its plan is shown.
 */
export const withReadings = (given: Material, job: Job, devices: readonly Device[]): Material => ({
  ...given,
  job: { ...given.job, readings: JSON.stringify({ job, devices: devicesOf(job, devices) }) },
})

/** The devices that the tests of a job name. */
export function devicesOf({ tests }: Pick<Job, 'tests'>, devices: readonly Device[]): Device[] {
  const used = new Set(tests.flatMap(({ sheet }) => devicesIn(sheet)))
  return devices.filter(({ id }) => used.has(id))
}

const report = (group: string, name: string): ReadyFile => ({ group, name, type: 'application/pdf' })

/** The reports that a form can be given; their bytes are made when a form map asks for them. */
function reportFiles(keys: readonly string[]): Record<string, ReadyFile> {
  if (keys.length === 0) return {}
  return {
    report: report('', 'report.pdf'),
    ...Object.fromEntries(
      keys.map((key) => [
        `${key}/report`,
        report(key, `report-${key.replaceAll(/[^\p{L}\p{N}]+/gu, '-').slice(0, 60)}.pdf`),
      ]),
    ),
  }
}
