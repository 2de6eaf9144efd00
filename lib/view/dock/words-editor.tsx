import { useState } from 'preact/hooks'
import type { Control } from '../../form/page/controls.ts'
import type { Material } from '../../form/material.ts'
import type { Source } from '../../form/schema.ts'
import { Icon } from '../parts/icons.tsx'
import type { ItemRow } from './item-list.tsx'
import { WriteFields } from './write-fields.tsx'
import { say } from '../../words/say.ts'

type Parts = Extract<Source, { from: 'words' }>['parts']

interface WordsEditorProps {
  parts: Parts
  rows: readonly ItemRow[]
  material: Material
  control: Control
  onChange: (parts: Parts) => void
}

/** Words and figures one after another: each part is a box of words or a figure with its own way of being written. */
export function WordsEditor({ parts, rows, material, control, onChange }: WordsEditorProps) {
  const [open, setOpen] = useState<number>()
  const replace = (index: number, part: Parts[number]) => onChange(parts.with(index, part))
  const drop = (index: number) => {
    setOpen(undefined)
    onChange(parts.toSpliced(index, 1))
  }
  const groups = [...new Set(rows.map((row) => row.group))]

  return (
    <>
      <ol class="pieces" aria-label={say`Parts`}>
        {parts.map((part, index) => {
          const row = 'item' in part ? rows.find(({ id }) => id === part.item) : undefined
          const item = 'item' in part ? material.items[part.item] : undefined
          return (
            // Parts have no identity but their place.
            // oxlint-disable-next-line react/no-array-index-key
            <li key={index}>
              {'text' in part ? (
                <input
                  class="box"
                  aria-label={say`Words, part ${index + 1}`}
                  placeholder={say`Words, part ${index + 1}`}
                  value={part.text}
                  onInput={(event) => replace(index, { text: event.currentTarget.value })}
                />
              ) : (
                <button
                  type="button"
                  class="chip"
                  aria-expanded={open === index}
                  onClick={() => setOpen(open === index ? undefined : index)}
                >
                  {row ? `${row.group}: ${row.label}` : part.item} <b>{row?.value}</b>
                </button>
              )}
              <button
                type="button"
                class="ib"
                aria-label={say`Take away part ${index + 1}`}
                onClick={() => drop(index)}
              >
                <Icon name="x" />
              </button>
              {open === index && 'item' in part && item && (
                <div class="inner">
                  <WriteFields
                    item={item}
                    write={part.write}
                    control={control}
                    onChange={(write) => replace(index, { item: part.item, write })}
                  />
                </div>
              )}
            </li>
          )
        })}
      </ol>
      <div class="adds">
        <button type="button" class="b low" onClick={() => onChange([...parts, { text: '' }])}>
          {say`Add words`}
        </button>
        <label class="add-figure">
          <span class="vh">{say`Add a figure`}</span>
          <select
            class="box"
            value=""
            onChange={(event) => {
              const item = event.currentTarget.value
              if (item) onChange([...parts, { item, write: {} }])
              event.currentTarget.value = ''
            }}
          >
            <option value="">{say`Add a figure…`}</option>
            {groups.map((group) => (
              <optgroup key={group} label={group}>
                {rows
                  .filter((row) => row.group === group)
                  .map((row) => (
                    <option key={row.id} value={row.id}>
                      {row.label}
                      {row.value && `: ${row.value}`}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        </label>
      </div>
    </>
  )
}
