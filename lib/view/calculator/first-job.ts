import { getSettings, saveSettings } from '../../book/settings.ts'
import { emptyJob, emptyTest, nextRole } from '../../job/empty.ts'
import type { Job } from '../../job/schema.ts'

/** A new job with one enclosure test, in the person's own units and with the tester of the profile. */
export async function firstJob(): Promise<Job> {
  const { units, tester, onboarded } = await getSettings()
  const job = emptyJob(units, tester)
  if (!onboarded) await saveSettings({ onboarded: true })
  return { ...job, tests: [emptyTest(nextRole(job, 'enclosure'), 'enclosure', units)] }
}
