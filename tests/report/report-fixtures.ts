/** Tests whose report fills a page, and one that has little to say. */
import { demoDevice, demoJob } from '../../lib/job/demo.ts'
import { emptyPoint } from '../../lib/job/empty.ts'
import type { Job, Test } from '../../lib/job/schema.ts'

const readings = [
  ['-60.6', '872'],
  ['-55.2', '838'],
  ['-50.9', '793'],
  ['-44.8', '710'],
  ['-39.1', '652'],
  ['-32.6', '576'],
  ['-26.8', '515'],
  ['-20.7', '430'],
] as const

export const devices = [demoDevice()]
export const anchor = {
  number: 231,
  hash: '0c8b0d54914e25523a1bdd6f31e692d35deb35676868cfd9ca9ff2a4dc620c08',
  same: true,
}

/** A regression of eight points after the work. */
export function eightPoints(): { job: Job; test: Test } {
  const job = demoJob()
  const after = job.tests[1]!
  const points = readings.map(([pressure, flow]) => Object.assign(emptyPoint(), { pressure, flow, range: 'middle' }))
  const test: Test = {
    ...after,
    role: 'final',
    date: '2026-02-25',
    sheet: {
      ...after.sheet,
      procedure: 'astm-e779',
      baselineBefore: '-1.1',
      baselineAfter: '-0.9',
      points,
    },
  }
  return { job: { ...job, tests: [test] }, test }
}
