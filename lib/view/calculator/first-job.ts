import { listDevices } from '../../book/devices.ts'
import { listLimits } from '../../book/limits.ts'
import { getSettings, saveSettings } from '../../book/settings.ts'
import { emptyJob, emptyTest, nextRole } from '../../job/empty.ts'
import { firstTest } from '../../job/first-test.ts'
import type { Job } from '../../job/schema.ts'

/** A new job with one enclosure test, in the person's own units and set-up and with the tester of the profile. */
export async function firstJob(): Promise<Job> {
  const [{ units, tester, onboarded, firstTest: set }, devices, limits] = await Promise.all([
    getSettings(),
    listDevices(),
    listLimits(),
  ])
  const job = emptyJob(units, tester)
  if (!onboarded) await saveSettings({ onboarded: true })
  const test = emptyTest(nextRole(job, 'enclosure'), 'enclosure', units)
  return { ...job, tests: [set ? firstTest(job, test, set, { limits, devices }) : test] }
}
