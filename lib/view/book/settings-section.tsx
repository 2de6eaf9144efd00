import { office } from '../../book/office.ts'
import { shelfRecord } from '../../book/shelf/record.ts'
import { themes, type Settings } from '../../book/schema.ts'
import type { Tester, TypedUnits } from '../../job/schema.ts'
import { Cautions } from '../calculator/cautions.tsx'
import { About } from './about.tsx'
import { BackupPanel } from './backup-panel.tsx'
import { BooksPanel } from './books-panel.tsx'
import { ChoiceField, TextField, Trouble } from './field.tsx'
import { FirstTestPanel } from './first-test-panel.tsx'
import { FramesPanel } from './frames-panel.tsx'
import { HpxmlPanel } from './hpxml-panel.tsx'
import { ImportPanel } from './import-panel.tsx'
import { OfficePanel } from './office-panel.tsx'
import { Said, useSaid } from './said.tsx'
import { ShelfPanel } from './shelf-panel.tsx'
import { readStorage, StorageState } from './storage-state.tsx'
import { damagedSettings } from '../../book/damaged.ts'
import { useLive } from '../parts/use-live.ts'
import { useSettings } from './use-settings.ts'
import { say } from '../../words/say.ts'

const themeWords: Record<Settings['theme'], string> = {
  system: say`as the system has it`,
  light: say`light colours`,
  dark: say`dark colours`,
  contrast: say`high contrast`,
}

const flow: readonly (readonly [TypedUnits['flow'], string])[] = [
  ['cfm', 'cfm'],
  ['m3/h', 'm³/h'],
  ['L/s', 'L/s'],
]
const temperature: readonly (readonly [TypedUnits['temperature'], string])[] = [
  ['degF', '°F'],
  ['degC', '°C'],
]
const length: readonly (readonly [TypedUnits['length'], string])[] = [
  ['ft', say`feet, ft², ft³`],
  ['m', say`metres, m², m³`],
]

/** What is known of the shelf; nothing inside while none is used. */
const readShelf = async () => ({ record: await shelfRecord() })

/** Tester, units, look, storage, shelf, import, cautions, about. */
export function SettingsSection() {
  const { settings, trouble, set: change } = useSettings()
  const policy = useLive(office, ['maps', 'limits', 'settings'])
  const damaged = useLive(damagedSettings, ['settings'])
  const { said, run } = useSaid()
  const storage = useLive(readStorage, ['entries'])
  const shelf = useLive(readShelf, ['settings'])
  // All at once: a part that came later would push the others down.
  if (!settings || !policy.value || (!storage.value && storage.loading) || (!shelf.value && shelf.loading))
    return <Trouble text={trouble || policy.trouble} />
  const { tester, units, theme } = settings
  const { set: fixed } = policy.value
  const setTester = (patch: Partial<Tester>) => run(() => change((now) => ({ tester: { ...now.tester, ...patch } })))
  const setUnits = (patch: Partial<TypedUnits>) => run(() => change((now) => ({ units: { ...now.units, ...patch } })))

  return (
    <div class="sections">
      <Said said={said} />
      {damaged.value?.map((name) => (
        <p key={name} class="note bad" role="alert">
          {say`The setting ${name} is damaged. The usual one stands in its place; what was kept is put aside when you set anything.`}
        </p>
      ))}
      <section class="group">
        <h2>{say`Tester`}</h2>
        <p class="q">{say`Copied into each new job. Jobs that exist keep what they have.`}</p>
        <div class="fields">
          <TextField label={say`Name`} value={tester.name} onInput={(name) => setTester({ name })} />
          <TextField
            label={say`Company`}
            value={tester.company}
            disabled={fixed.company !== undefined}
            hint={fixed.company === undefined ? undefined : say`from your office`}
            onInput={(company) => setTester({ company })}
          />
          <TextField
            label={say`Licence or rater id`}
            value={tester.licence}
            onInput={(licence) => setTester({ licence })}
          />
          <TextField
            label={say`It expires on`}
            type="date"
            value={tester.licenceExpiry}
            onInput={(licenceExpiry) => setTester({ licenceExpiry })}
          />
          <TextField label={say`Phone`} type="tel" value={tester.phone} onInput={(phone) => setTester({ phone })} />
          <TextField label={say`Email`} type="email" value={tester.email} onInput={(email) => setTester({ email })} />
        </div>
      </section>
      <section class="group">
        <h2>{say`Units of a new job`}</h2>
        {fixed.units && <p class="q">{say`From your office.`}</p>}
        <div class="fields">
          <ChoiceField
            label={say`Flow`}
            value={units.flow}
            disabled={fixed.units !== undefined}
            options={flow}
            onPick={(picked) => setUnits({ flow: picked })}
          />
          <ChoiceField
            label={say`Temperature`}
            value={units.temperature}
            disabled={fixed.units !== undefined}
            options={temperature}
            onPick={(picked) => setUnits({ temperature: picked })}
          />
          <ChoiceField
            label={say`Lengths, areas, volumes`}
            value={units.length}
            disabled={fixed.units !== undefined}
            options={length}
            onPick={(picked) => setUnits({ length: picked })}
          />
        </div>
      </section>
      <FirstTestPanel
        set={settings.firstTest ?? {}}
        onSet={(patch) => run(() => change((now) => ({ firstTest: { ...now.firstTest, ...patch } })))}
      />
      <section class="group">
        <h2>{say`Look`}</h2>
        {fixed.theme && <p class="q">{say`From your office.`}</p>}
        <fieldset class="choices" disabled={fixed.theme !== undefined}>
          <legend class="vh">{say`Look`}</legend>
          {themes.map((name) => (
            <label key={name}>
              <input
                type="radio"
                name="theme"
                checked={theme === name}
                onChange={() => run(() => change(() => ({ theme: name })))}
              />
              {themeWords[name]}
            </label>
          ))}
        </fieldset>
      </section>
      <FramesPanel />
      <OfficePanel policy={policy} />
      <StorageState state={storage} />
      <BackupPanel />
      <ImportPanel />
      <ShelfPanel record={shelf.value?.record} trouble={shelf.trouble} />
      <BooksPanel />
      <HpxmlPanel />
      <section class="group">
        <h2>{say`Before and after a test`}</h2>
        <Cautions />
      </section>
      <About />
    </div>
  )
}
