/** What of the book a report names: the newest entry about its job. */
import canonicalize from 'canonicalize'
import { listEntries } from '../book/entries.ts'
import { isFill } from '../book/rows.ts'
import type { FillEntry } from '../book/schema.ts'
import { devicesIn } from '../job/devices-in.ts'
import type { Device, Job, Test } from '../job/schema.ts'
import { limitOf } from '../job/verdict.ts'
import type { Anchor } from './content.ts'

/** The newest fill of the job that is in the book. */
export async function newestFill(job: string): Promise<FillEntry | undefined> {
  return (await listEntries({ job, kind: 'fill', limit: 1 })).find(isFill)
}

const typedOf = (job: Job | undefined, test: Test): string =>
  canonicalize({
    building: job?.building,
    tester: job?.tester,
    test: job?.tests.find(({ id }) => id === test.id),
  }) ?? ''

export const anchorOf = (
  entry: FillEntry | undefined,
  job: Job,
  test: Test,
  devices: readonly Device[],
): Anchor | undefined =>
  entry && {
    number: entry.number,
    hash: entry.hash,
    same: typedOf(entry.readings, test) === typedOf(job, test),
    ...(movedSince(entry, test, devices) && { moved: true }),
  }

/** Whether the device or the limit of a test is another than the entry holds. */
function movedSince({ basis }: FillEntry, test: Test, devices: readonly Device[]): boolean {
  const held = basis?.tests.find((one) => one.test === test.id)
  if (!basis || !held) return false
  const deviceIn = (all: readonly Device[]) => canonicalize(all.filter(({ id }) => devicesIn(test.sheet).includes(id)))
  return deviceIn(basis.devices) !== deviceIn(devices) || canonicalize(held.limit) !== canonicalize(limitOf(test).limit)
}
