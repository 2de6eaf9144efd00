import { useState } from 'preact/hooks'
import { fileParts } from '../../book/json.ts'
import { mapVersions, saveMap } from '../../book/maps.ts'
import type { Binding, FormMap } from '../../form/schema.ts'
import { Icon } from '../parts/icons.tsx'
import { BindingEditor } from './binding-editor.tsx'
import { download, jsonType } from './download.ts'
import { fileName } from './file-name.ts'
import { TextField } from './field.tsx'
import type { KnownItems } from './known-items.ts'
import { dropDraft, readDraft, whatIsMissing, writeDraft } from './map-draft.ts'
import { MapVersions } from './map-versions.tsx'
import { Said, useSaid } from './said.tsx'
import { sourceWords, sourceWrite } from './source-words.ts'
import { say } from '../../words/say.ts'

interface Props {
  map: FormMap
  items: KnownItems
  onDelete: () => void
  onKept: (kept: FormMap) => void
}

/** One form map: name, address, bindings. Changes are a draft until they are kept as the next version. */
export function MapEditor({ map, items, onDelete, onKept }: Props) {
  const [draft, setDraft] = useState(() => readDraft(map) ?? map)
  const [open, setOpen] = useState('')
  const { said, run } = useSaid()
  const changed = draft !== map
  const missing = changed ? whatIsMissing(draft) : ''

  const edit = (patch: Partial<FormMap>) => {
    const next = { ...draft, ...patch }
    setDraft(next)
    run(async () => writeDraft(next))
  }
  const discard = () => {
    dropDraft(map.id)
    setDraft(map)
  }
  const keep = () =>
    run(async () => {
      const kept = await saveMap(draft)
      dropDraft(map.id)
      onKept(kept)
    })
  const move = (at: number, by: number) => {
    const binding = draft.bindings[at]
    if (binding) edit({ bindings: draft.bindings.toSpliced(at, 1).toSpliced(at + by, 0, binding) })
  }

  return (
    <div class="body">
      <div class="fields">
        <TextField label={say`Name`} value={draft.name} onInput={(name) => edit({ name })} />
        <TextField
          label={say`Site`}
          value={draft.address.origin}
          onInput={(origin) => edit({ address: { ...draft.address, origin: origin.trim() } })}
        />
        <TextField
          label={say`Path`}
          value={draft.address.path}
          hint={say`* stands for one part between slashes, ** at the end for any rest`}
          onInput={(path) => edit({ address: { ...draft.address, path: path.trim() } })}
        />
      </div>
      <ol class="bindings" aria-label={say`Bindings of ${draft.name}`}>
        {draft.bindings.map((binding, at) => (
          <BindingRow
            key={binding.id}
            binding={binding}
            items={items}
            place={at}
            heading={binding.control.section !== draft.bindings[at - 1]?.control.section}
            last={at === draft.bindings.length - 1}
            open={open === binding.id}
            onToggle={() => setOpen(open === binding.id ? '' : binding.id)}
            onMove={(by) => move(at, by)}
            onRemove={() => edit({ bindings: draft.bindings.toSpliced(at, 1) })}
            onChange={(next) => edit({ bindings: draft.bindings.with(at, next) })}
          />
        ))}
      </ol>
      <Said said={said} />
      {changed && (
        <div class="keep" role="group" aria-label={say`Changes`}>
          <span>{missing || say`Changed, not kept yet. Keeping makes version ${map.version + 1}.`}</span>
          <button type="button" class="b low first" disabled={missing !== ''} onClick={keep}>
            {say`Keep the changes`}
          </button>
          <button type="button" class="b low" onClick={discard}>
            {say`Undo all changes`}
          </button>
        </div>
      )}
      <div class="acts">
        <button
          type="button"
          class="b low"
          onClick={() =>
            run(async () =>
              download(
                fileName(map.name, 'json'),
                jsonType,
                fileParts({ maps: (await mapVersions(map.id)).toReversed() }),
              ),
            )
          }
        >
          {say`Export this form map`}
        </button>
        <button type="button" class="b low bare" onClick={onDelete}>
          {say`Delete it`}
        </button>
      </div>
      <MapVersions
        id={map.id}
        newest={map.version}
        items={items}
        onTake={({ name, address, bindings }) => edit({ name, address, bindings })}
      />
    </div>
  )
}

interface RowProps {
  binding: Binding
  items: KnownItems
  place: number
  /** Whether the section is said: only where it changes. */
  heading: boolean
  last: boolean
  open: boolean
  onToggle: () => void
  onMove: (by: number) => void
  onRemove: () => void
  onChange: (binding: Binding) => void
}

function BindingRow({ binding, items, place, heading, last, open, onToggle, onMove, onRemove, onChange }: RowProps) {
  const { control, source } = binding
  const name = control.name || say`${control.kind} without a name`
  return (
    <li class={open ? 'open' : undefined}>
      <div class="line">
        <button type="button" class="link" aria-expanded={open} onClick={onToggle}>
          <Icon name="tw" class={open ? 'tw down' : 'tw'} />
          <span>
            {name}
            {heading && control.section && <small class="q">{control.section}</small>}
          </span>
        </button>
        <span class="src">{sourceWords(source, items)}</span>
        <span class="q how">{sourceWrite(source)}</span>
        <span class="tools">
          <button
            type="button"
            class="ib up"
            disabled={place === 0}
            aria-label={say`Move ${name} up`}
            onClick={() => onMove(-1)}
          >
            <Icon name="tw" />
          </button>
          <button
            type="button"
            class="ib down"
            disabled={last}
            aria-label={say`Move ${name} down`}
            onClick={() => onMove(1)}
          >
            <Icon name="tw" />
          </button>
          <button type="button" class="ib" aria-label={say`Remove ${name}`} onClick={onRemove}>
            <Icon name="x" />
          </button>
        </span>
      </div>
      {open && <BindingEditor binding={binding} items={items} onChange={onChange} />}
    </li>
  )
}
