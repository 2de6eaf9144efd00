/** Jobs and tests to try things on: complete, unless a test says otherwise. */
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { emptyPoint } from '../../lib/job/empty.ts'
import type { Device, Job, Test, TypedPoint, TypedSheet } from '../../lib/job/schema.ts'

export const fakeDevices = (overrides: Partial<Device> = {}): Device[] => [{ ...demoDevice(), ...overrides }]

export function fakeJob(building: Partial<Job['building']> = {}): Job {
  const job = demoJob()
  return { ...job, building: { ...job.building, ...building } }
}

/** The test after the work: three readings, baselines, temperatures. */
export function fakeTest(sheet: Partial<TypedSheet> = {}, overrides: Partial<Test> = {}): Test {
  const test = demoJob().tests.find(({ role }) => role === 'after')
  if (test === undefined) throw new Error('the demo job has no test after the work')
  return { ...test, ...overrides, sheet: { ...test.sheet, ...sheet } }
}

export const points = (
  ...rows: [pressure: string, flow: string, devicePressure?: string, range?: string][]
): TypedPoint[] =>
  rows.map(([pressure, flow, devicePressure = '', range = '']) =>
    Object.assign(emptyPoint(), { pressure, flow, devicePressure, range }),
  )

/** Every number anywhere in a value. */
export function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap((inner) => numbersIn(inner))
}

/** Processor time that `work` takes, in milliseconds: what the machine does beside it does not count. */
export function effort<T>(work: () => T): { result: T; milliseconds: number } {
  const start = process.cpuUsage()
  const result = work()
  const { user, system } = process.cpuUsage(start)
  return { result, milliseconds: (user + system) / 1000 }
}
