import type { Binding, Source } from '../../form/schema.ts'
import { ChoiceField, TextField } from './field.tsx'
import { ItemPicker, usualWrite } from './item-picker.tsx'
import type { KnownItems } from './known-items.ts'
import { WordsEditor } from './words-editor.tsx'
import { WriteFields } from './write-fields.tsx'
import { say } from '../../words/say.ts'

const kinds: readonly (readonly [Source['from'], string])[] = [
  ['item', say`a figure or field`],
  ['text', say`always the same text`],
  ['words', say`words with figures between them`],
  ['file', say`a file`],
]

interface Props {
  binding: Binding
  items: KnownItems
  onChange: (binding: Binding) => void
}

/** What goes into one control, and how it is written. */
export function BindingEditor({ binding, items, onChange }: Props) {
  const { source, control } = binding
  const set = (next: Source) => onChange({ ...binding, source: next })
  return (
    <div class="fields">
      <ChoiceField
        label={say`Filled with`}
        value={source.from}
        options={kinds.filter(([kind]) => kind !== 'file' || source.from === 'file')}
        onPick={(from) => set(turned(source, from))}
      />
      {source.from === 'item' && (
        <>
          <ItemPicker
            label={say`Figure or field`}
            item={source.item}
            items={items}
            onPick={(item, known) => set({ from: 'item', item, write: usualWrite(known) })}
          />
          <WriteFields
            write={source.write}
            item={items.get(source.item)}
            control={control}
            onChange={(write) => set({ ...source, write })}
          />
        </>
      )}
      {source.from === 'text' && (
        <TextField label={say`Text`} wide value={source.text} onInput={(text) => set({ from: 'text', text })} />
      )}
      {source.from === 'file' && (
        <p>{say`${source.name}: chosen when the page was mapped. Map the page again to change it.`}</p>
      )}
      {source.from === 'words' && (
        <WordsEditor
          parts={source.parts}
          control={control}
          items={items}
          onChange={(parts) => set({ from: 'words', parts })}
        />
      )}
    </div>
  )
}

/** The same content as another kind of source, as far as it goes. */
function turned(source: Source, from: Source['from']): Source {
  if (from === source.from || from === 'file') return source
  if (from === 'words') {
    return {
      from,
      parts:
        source.from === 'item'
          ? [{ item: source.item, write: source.write }]
          : source.from === 'text'
            ? [{ text: source.text }]
            : [],
    }
  }
  if (from === 'text') return { from, text: '' }
  const first = source.from === 'words' ? source.parts.find((part) => 'item' in part) : undefined
  return { from, item: first?.item ?? '', write: first?.write ?? {} }
}
