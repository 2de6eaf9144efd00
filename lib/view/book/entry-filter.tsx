import { useEffect, useState } from 'preact/hooks'
import type { FormMap } from '../../form/schema.ts'
import { outcomes } from '../../form/schema.ts'
import type { Filter } from '../../book/rows.ts'
import { Icon } from '../icons.tsx'
import { ChoiceField, TextField } from './field.tsx'

type Asked = NonNullable<Filter['outcome']> | ''

const outcomeOptions: readonly (readonly [Asked, string])[] = [
  ['', 'any'],
  ['to look at', 'to look at'],
  ...outcomes.map((outcome) => [outcome, outcome] as const),
]

/** So long after the last keystroke the list is searched. */
const pause = 200

interface Props {
  filter: Filter
  onChange: (filter: Filter) => void
  maps: readonly FormMap[]
}

/** What is looked for among the entries. */
export function EntryFilter({ filter, onChange, maps }: Props) {
  const [text, setText] = useState(filter.text ?? '')
  const set = (patch: Filter) => onChange({ ...filter, text, ...patch })

  useEffect(() => {
    if (text === (filter.text ?? '')) return
    const timer = setTimeout(() => onChange({ ...filter, text }), pause)
    return () => clearTimeout(timer)
  }, [text])

  return (
    <>
      <div class="find">
        <Icon name="find" />
        <TextField
          label="Find"
          type="search"
          wide
          value={text}
          onInput={setText}
          placeholder="address, job, control or text"
        />
      </div>
      <ChoiceField
        label="Form map"
        value={filter.map ?? ''}
        options={[['', 'all'], ...maps.map(({ id, name }) => [id, name] as const)]}
        onPick={(map) => set({ map })}
      />
      <ChoiceField
        label="Outcome"
        value={filter.outcome ?? ''}
        options={outcomeOptions}
        onPick={(outcome) => {
          const { outcome: _, ...rest } = filter
          onChange({ ...rest, text, ...(outcome && { outcome }) })
        }}
      />
      <TextField label="From" type="date" value={filter.from ?? ''} onInput={(from) => set({ from })} />
      <TextField label="To" type="date" value={filter.to ?? ''} onInput={(to) => set({ to })} />
    </>
  )
}
