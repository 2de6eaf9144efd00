import { unitsByPlace } from '../job/units-by-place.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { announce } from './notice.ts'
import { office } from './office.ts'
import { settingsSchema, type Settings } from './schema.ts'
import { say } from '../words/say.ts'

const unset = (): Settings => ({
  tester: { name: '', company: '', licence: '', licenceExpiry: '', phone: '', email: '' },
  units: unitsByPlace(navigator.language),
  current: { job: '', test: '' },
  onboarded: false,
  theme: 'system',
  backedUp: '',
})

/** The settings as they hold: what the office set goes before what the person chose. */
export async function getSettings(): Promise<Settings> {
  const [kept, { set }] = await Promise.all([(await database()).get('single', 'settings'), office()])
  const { tester, ...own } = settingsSchema.parse({ ...unset(), ...kept })
  const { company = tester.company, ...rest } = set
  return { ...own, ...rest, tester: { ...tester, company } }
}

/**
 * Changes the settings named in `patch` and leaves the others.
 * @throws BookError when a setting does not fit.
 */
export async function saveSettings(patch: Partial<Settings>): Promise<Settings> {
  const tx = (await database()).transaction('single', 'readwrite')
  const kept = check(settingsSchema, { ...unset(), ...(await tx.store.get('settings')), ...patch }, say`The setting`)
  const put = tx.store.put(kept, 'settings')
  tx.commit()
  await Promise.all([put, tx.done])
  announce({ what: 'settings' })
  return kept
}
