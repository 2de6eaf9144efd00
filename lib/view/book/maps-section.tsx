import { damagedMaps, deleteMap, listMaps, restoreMap } from '../../book/maps.ts'
import { fromOffice } from '../../book/office.ts'
import type { FormMap } from '../../form/schema.ts'
import { fileParts } from '../../book/json.ts'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { Empty, Trouble } from './field.tsx'
import { knownItems, type KnownItems } from './known-items.ts'
import { MapEditor } from './map-editor.tsx'
import { OfficeMap } from './office-map.tsx'
import { hashOf, type Route } from './route.ts'
import { Said, useSaid } from './said.tsx'
import { useLive } from '../parts/use-live.ts'
import { count, day, placeWords } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** What is known before the jobs are read. */
const none: KnownItems = new Map()

/** The form maps; one opens in place to be looked at and edited. */
export function MapsSection({ open, go }: { open: string | undefined; go: (route: Route) => void }) {
  const maps = useLive(listMaps, ['maps'])
  const damaged = useLive(damagedMaps, ['maps'])
  const items = useLive(knownItems, ['jobs', 'devices'])
  const { said, tell, run } = useSaid()
  const own = maps.value?.filter(({ id }) => !fromOffice(id)) ?? []

  const remove = (map: FormMap) =>
    run(
      () => deleteMap(map.id),
      () => {
        go({ section: 'maps' })
        tell(say`${map.name} was deleted. Its versions stay.`, say`Put it back`, () => restoreMap(map.id))
      },
    )

  if (!maps.value || !damaged.value) return <Trouble text={maps.trouble || damaged.trouble} />
  return (
    <>
      <div class="head">
        <p class="q lead">
          {say`A form map says what goes into which control of a page. Make one on the page itself; change here what is written and how. Every change makes a new version, and entries name the version they used.`}
        </p>
        <a class="b" href="/pdf-form.html">
          {say`Open a PDF form`}
        </a>
        <button
          type="button"
          class="b"
          disabled={own.length === 0}
          onClick={() => run(() => download(fileName('form maps', 'json'), jsonType, fileParts({ maps: own })))}
        >
          {say`Export all`}
        </button>
        <a class="b" href={hashOf({ section: 'settings' })}>
          {say`Take in a file`}
        </a>
      </div>
      <Trouble text={maps.trouble || items.trouble} />
      {damaged.value.map(({ id, name, version, path }) => (
        <p key={`${id} ${version}`} class="note bad" role="alert">
          {say`Version ${version} of ${name} is damaged (${path}). It is kept but not used: the version before it is. Save that as a new version, or take the form map in again from a file.`}
        </p>
      ))}
      {maps.value.length === 0 && (
        <Empty title={say`No form maps yet`}>
          <p>
            {say`Open a form that asks for your figures, open Gapsum from the toolbar and choose to map the page. Or take in a form map that a colleague exported, under Settings.`}
          </p>
        </Empty>
      )}
      {maps.value.map((map) => (
        <details
          key={map.id}
          class="sec"
          open={map.id === open}
          onToggle={(event) => {
            if (event.currentTarget.open) go({ section: 'maps', map: map.id })
            else if (map.id === open) go({ section: 'maps' })
          }}
        >
          <summary>
            <h2>{map.name}</h2>
            <span class="q">{placeWords(map.address)}</span>
            <span class="end">
              {fromOffice(map.id) && say`from your office, `}
              {say`${count(map.bindings.length, 'binding')}, version ${map.version}, ${day(map.updated)}`}
            </span>
          </summary>
          {map.id === open && fromOffice(map.id) && <OfficeMap map={map} items={items.value ?? none} />}
          {map.id === open && !fromOffice(map.id) && (
            <MapEditor
              key={map.version}
              map={map}
              items={items.value ?? none}
              onDelete={() => remove(map)}
              onKept={({ name, version }) => tell(say`${name} was kept as version ${version}.`)}
            />
          )}
        </details>
      ))}
      <Said said={said} foot />
    </>
  )
}
