import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Control } from '../../form/page/controls.ts'
import type { Material } from '../../form/material.ts'
import type { Source, Write } from '../../form/schema.ts'
import { writeFor } from '../../form/map/write-for.ts'
import { Icon } from '../parts/icons.tsx'
import { howFound, titleOf } from './describe.ts'
import { ItemList, type ItemRow } from './item-list.tsx'
import { FileField } from './file-field.tsx'
import { firstText, FixedText } from './fixed-text.tsx'
import { WordsEditor } from './words-editor.tsx'
import { WriteFields } from './write-fields.tsx'
import { say } from '../../words/say.ts'

interface QuestionProps {
  control: Control
  number: number
  material: Material
  /** Every item, in the order of the material. */
  rows: readonly ItemRow[]
  /** The likely ones, best first, with a reason. */
  proposals: readonly ItemRow[]
  source: Source | undefined
  onSource: (source: Source) => void
  preview: { text: string; note: string; bad: boolean } | undefined
  /** Said when another control of the page looks the same. */
  twin: string
  onBack: () => void
}

/** What goes into one control, and how it is written. */
export function Question(props: QuestionProps) {
  const { control, number, material, rows, proposals, source, onSource, preview, twin, onBack } = props
  const [query, setQuery] = useState('')
  const heading = useRef<HTMLHeadingElement>(null)
  // Before the next frame: by then the person may type in the search.
  useLayoutEffect(() => {
    // The button "Bind, then next" keeps the focus while it can be pressed again.
    if (!document.activeElement?.matches('button:enabled')) heading.current?.focus({ preventScroll: true })
    heading.current?.closest('.bd')?.scrollTo({ top: 0 })
  }, [])
  const chosen = source?.from === 'item' ? source.item : undefined
  const proposed = useMemo(() => new Set(proposals.map(({ id }) => id)), [proposals])
  const wanted = query.trim().toLowerCase().split(/\s+/).filter(Boolean)
  const matching = rows.filter(({ group, label }) => {
    const text = `${group} ${label}`.toLowerCase()
    return wanted.every((word) => text.includes(word))
  })
  const rest = wanted.length > 0 ? matching : rows.filter(({ id }) => !proposed.has(id))
  const chosenElsewhere = chosen !== undefined && !proposed.has(chosen)
  const item = chosen === undefined ? undefined : material.items[chosen]
  const takesFile = control.kind === 'file'
  const unwritten =
    (source?.from === 'text' && source.text === '') ||
    (source?.from === 'words' && source.parts.every((part) => 'text' in part && part.text === ''))
  const writeOf = (id: string): Write => {
    const taken = material.items[id]
    return taken ? writeFor(taken, control) : {}
  }
  const choose = (id: string) => {
    if (id !== chosen) onSource({ from: 'item', item: id, write: writeOf(id) })
  }

  return (
    <>
      <p class="asking">
        <button type="button" class="b bare low" onClick={onBack}>
          {say`All controls`}
        </button>
        <span class="end">{say`control ${number}`}</span>
      </p>
      <h2 ref={heading} tabIndex={-1}>
        {say`What goes into “${titleOf(control)}”?`}
      </h2>
      <p class="found">{howFound(control)}</p>
      {twin && <p class="note">{twin}</p>}
      {takesFile ? (
        <FileField source={source} material={material} onSource={onSource} />
      ) : (
        <>
          <label class="seek">
            <Icon name="find" />
            <input
              type="search"
              placeholder={say`Find a figure or job field`}
              aria-label={say`Find a figure or job field`}
              value={query}
              onInput={(event) => setQuery(event.currentTarget.value)}
              onKeyDown={(event) => {
                if (event.key !== 'Escape' || !query) return
                event.preventDefault()
                setQuery('')
              }}
            />
          </label>
          <fieldset class="ops">
            <legend class="vh">{say`What goes into “${titleOf(control)}”?`}</legend>
            {wanted.length === 0 && <ItemList rows={proposals} chosen={chosen} onChoose={choose} />}
            {wanted.length === 0 && (
              <>
                <label class={`op ${source?.from === 'text' ? 'on' : ''}`}>
                  <input
                    type="radio"
                    name="source"
                    checked={source?.from === 'text'}
                    onChange={() => onSource({ from: 'text', text: firstText(control) })}
                  />
                  <span>{say`Fixed text`}</span>
                </label>
                <label class={`op ${source?.from === 'words' ? 'on' : ''}`}>
                  <input
                    type="radio"
                    name="source"
                    checked={source?.from === 'words'}
                    onChange={() => onSource({ from: 'words', parts: [{ text: '' }] })}
                  />
                  <span>{say`Words with figures between them`}</span>
                </label>
              </>
            )}
            {wanted.length > 0 ? (
              <ItemList grouped rows={rest} chosen={chosen} onChoose={choose} />
            ) : (
              <details open={proposals.length === 0 || chosenElsewhere}>
                <summary>
                  <Icon name="tw" /> {say`All figures and job fields`}
                </summary>
                <ItemList grouped rows={rest} chosen={chosen} onChoose={choose} />
              </details>
            )}
            {wanted.length > 0 && matching.length === 0 && (
              <p class="q small none">{say`Nothing in this job is called “${query.trim()}”.`}</p>
            )}
          </fieldset>
        </>
      )}

      {source?.from === 'item' && item && (
        <WriteFields
          item={item}
          write={source.write}
          control={control}
          onChange={(write) => onSource({ ...source, write })}
        />
      )}
      {source?.from === 'text' && (
        <FixedText control={control} text={source.text} onText={(text) => onSource({ from: 'text', text })} />
      )}
      {source?.from === 'words' && (
        <WordsEditor
          parts={source.parts}
          rows={rows}
          material={material}
          control={control}
          onChange={(parts) => onSource({ from: 'words', parts })}
        />
      )}
      {preview && !(preview.bad && unwritten) && (
        <p class="pv" role="status">
          {preview.bad ? (
            <span class="note bad">{preview.note}</span>
          ) : (
            <>
              {say`will be entered as `}
              <code class={preview.text.length > 18 ? 'long' : ''}>{preview.text || ' '}</code>
              {preview.note && <small>{preview.note}</small>}
            </>
          )}
        </p>
      )}
    </>
  )
}
