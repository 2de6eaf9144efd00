import { emptyTester } from '../job/empty.ts'
import { unitsByPlace } from '../job/units-by-place.ts'
import { check } from './check.ts'
import { database } from './database.ts'
import { announce } from './notice.ts'
import { copy } from './journal/copies.ts'
import { office } from './office.ts'
import { settingsSchema, type Settings } from './schema.ts'
import { say } from '../words/say.ts'

const unset = (): Settings => ({
  tester: emptyTester(),
  units: unitsByPlace(navigator.language),
  current: { job: '', test: '' },
  onboarded: false,
  theme: 'system',
  backedUp: '',
})

/** What was kept as far as it is sound, the rest as if never set; and the names of what is damaged. */
export function soundSettings(kept: object | undefined): { settings: Settings; damaged: string[] } {
  const usual: Record<string, unknown> = unset()
  const given = { ...usual, ...kept }
  const damaged = Object.entries(settingsSchema.shape).flatMap(([name, schema]) =>
    schema.safeParse(given[name]).success ? [] : name,
  )
  for (const name of damaged) given[name] = usual[name]
  return { settings: given as Settings, damaged }
}

/** The settings as they hold: what the office set goes before what the person chose. */
export async function getSettings(): Promise<Settings> {
  const [kept, { set }] = await Promise.all([(await database()).get('single', 'settings'), office()])
  const { tester, ...own } = soundSettings(kept).settings
  const { company = tester.company, ...rest } = set
  return { ...own, ...rest, tester: { ...tester, company } }
}

/**
 * Changes the settings named in `patch` and leaves the others.
 * @throws BookError when a setting does not fit.
 */
export async function saveSettings(patch: Partial<Settings>): Promise<Settings> {
  const tx = (await database()).transaction('single', 'readwrite')
  const before = await tx.store.get('settings')
  const { settings, damaged } = soundSettings(before)
  const kept = check(settingsSchema, { ...settings, ...patch }, say`The setting`)
  // What cannot be read is not lost when something else is set.
  if (before && damaged[0]) void tx.store.put(before, 'settings damaged')
  const put = tx.store.put(kept, 'settings')
  tx.commit()
  await Promise.all([put, tx.done, copy('single', 'settings', kept)])
  announce({ what: 'settings' })
  return kept
}
