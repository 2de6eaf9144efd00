import { check } from './check.ts'
import { database } from './database.ts'
import { announce } from './notice.ts'
import { settingsSchema, type Settings } from './schema.ts'

const unset: Settings = {
  tester: { name: '', company: '', licence: '', licenceExpiry: '', phone: '', email: '' },
  units: { flow: 'cfm', temperature: 'degF', length: 'ft' },
  current: { job: '', test: '' },
  onboarded: false,
  theme: 'system',
  backedUp: '',
}

export async function getSettings(): Promise<Settings> {
  const kept = await (await database()).get('single', 'settings')
  return settingsSchema.parse({ ...unset, ...kept })
}

/**
 * Changes the settings named in `patch` and leaves the others.
 * @throws BookError when a setting does not fit.
 */
export async function saveSettings(patch: Partial<Settings>): Promise<Settings> {
  const tx = (await database()).transaction('single', 'readwrite')
  const kept = check(settingsSchema, { ...unset, ...(await tx.store.get('settings')), ...patch }, 'The setting')
  const put = tx.store.put(kept, 'settings')
  tx.commit()
  await Promise.all([put, tx.done])
  announce({ what: 'settings' })
  return kept
}
