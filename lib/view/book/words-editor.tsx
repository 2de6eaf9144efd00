import type { Clues, Source } from '../../form/schema.ts'
import { Icon } from '../parts/icons.tsx'
import { TextField } from './field.tsx'
import { ItemPicker, usualWrite } from './item-picker.tsx'
import type { KnownItems } from './known-items.ts'
import { WriteFields } from './write-fields.tsx'
import { say } from '../../words/say.ts'

type Parts = Extract<Source, { from: 'words' }>['parts']

interface Props {
  parts: Parts
  control: Clues
  items: KnownItems
  onChange: (parts: Parts) => void
}

/** Words and figures, one after another, as they stand in the text. */
export function WordsEditor({ parts, control, items, onChange }: Props) {
  const set = (at: number, part: Parts[number]) => onChange(parts.with(at, part))
  return (
    <div class="wide parts">
      {parts.map((part, at) => (
        // oxlint-disable-next-line react/no-array-index-key -- a part has no id of its own; its place is what it is
        <div key={at} class="part">
          {'text' in part ? (
            <TextField label={say`Words ${at + 1}`} wide value={part.text} onInput={(text) => set(at, { text })} />
          ) : (
            <div class="fields">
              <ItemPicker
                label={say`Figure or field ${at + 1}`}
                item={part.item}
                items={items}
                onPick={(item, known) => set(at, { item, write: usualWrite(known) })}
              />
              <WriteFields
                write={part.write}
                item={items.get(part.item)}
                control={control}
                onChange={(write) => set(at, { ...part, write })}
              />
            </div>
          )}
          <button
            type="button"
            class="ib"
            aria-label={say`Remove part ${at + 1}`}
            onClick={() => onChange(parts.toSpliced(at, 1))}
          >
            <Icon name="x" />
          </button>
        </div>
      ))}
      <div class="acts">
        <button type="button" class="b low" onClick={() => onChange([...parts, { text: '' }])}>
          {say`Add words`}
        </button>
        <button type="button" class="b low" onClick={() => onChange([...parts, { item: '', write: {} }])}>
          {say`Add a figure or field`}
        </button>
      </div>
    </div>
  )
}
