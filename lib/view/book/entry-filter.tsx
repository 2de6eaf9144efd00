import { useEffect, useState } from 'preact/hooks'
import type { FormMap } from '../../form/schema.ts'
import { outcomes } from '../../form/schema.ts'
import type { OtherBook } from '../../book/others.ts'
import { everyBook, type Filter } from '../../book/rows.ts'
import { statuses, type Entry, type Status } from '../../book/entry-schema.ts'
import { orders, type Order } from '../../book/search.ts'
import { Icon } from '../icons.tsx'
import { ChoiceField, TextField } from './field.tsx'
import { kindWords } from './note-words.ts'
import { statusWords } from './status-words.tsx'
import { say, shown } from '../../words/say.ts'

type Asked = NonNullable<Filter['outcome']> | ''

const outcomeOptions: readonly (readonly [Asked, string])[] = [
  ['', say`any`],
  ['to look at', say`to look at`],
  ...outcomes.map((outcome) => [outcome, shown(outcome)] as const),
]

const statusOptions: readonly (readonly [Status | '', string])[] = [
  ['', say`any`],
  ...statuses.map((status) => [status, statusWords[status]] as const),
]

const kinds = ['fill', 'undo', 'follow-up', 'correction', 'attachment', 'review'] as const
const kindOptions: readonly (readonly [Entry['kind'] | '', string])[] = [
  ['', say`any`],
  ...kinds.map((kind) => [kind, kindWords[kind]] as const),
]

/** So long after the last keystroke the list is searched. */
const pause = 200

interface Props {
  filter: Filter
  onChange: (filter: Filter) => void
  order: Order
  onOrder: (order: Order) => void
  maps: readonly FormMap[]
  /** Books beside one's own, to choose one of. */
  books: readonly OtherBook[]
}

/** What is looked for among the entries. */
export function EntryFilter({ filter, onChange, order, onOrder, maps, books }: Props) {
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
          label={say`Find`}
          type="search"
          wide
          value={text}
          onInput={setText}
          placeholder={say`street, job, text`}
        />
      </div>
      <ChoiceField
        label={say`Form map`}
        value={filter.map ?? ''}
        options={[['', say`any`], ...maps.map(({ id, name }) => [id, name] as const)]}
        onPick={(map) => set({ map })}
      />
      <ChoiceField
        label={say`Outcome`}
        value={filter.outcome ?? ''}
        options={outcomeOptions}
        onPick={(outcome) => {
          const { outcome: _, ...rest } = filter
          onChange({ ...rest, text, ...(outcome && { outcome }) })
        }}
      />
      <ChoiceField
        label={say`Status`}
        value={filter.status ?? ''}
        options={statusOptions}
        onPick={(status) => {
          const { status: _, ...rest } = filter
          onChange({ ...rest, text, ...(status && { status }) })
        }}
      />
      <ChoiceField
        label={say`Kind`}
        value={filter.kind ?? ''}
        options={kindOptions}
        onPick={(kind) => {
          const { kind: _, ...rest } = filter
          onChange({ ...rest, text, ...(kind && { kind }) })
        }}
      />
      {books.length > 0 && (
        <ChoiceField
          label={say`Book`}
          value={filter.book ?? everyBook}
          options={[[everyBook, say`any`], ['', say`yours`], ...books.map(({ key, name }) => [key, name] as const)]}
          onPick={(book) => set({ book })}
        />
      )}
      <TextField label={say`From`} type="date" value={filter.from ?? ''} onInput={(from) => set({ from })} />
      <TextField label={say`To`} type="date" value={filter.to ?? ''} onInput={(to) => set({ to })} />
      <ChoiceField
        label={say`Order`}
        value={order}
        options={orders.map((one) => [one, shown(one)] as const)}
        onPick={onOrder}
      />
    </>
  )
}
