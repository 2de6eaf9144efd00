import { useEffect, useState } from 'preact/hooks'
import type { FormMap } from '../../form/schema.ts'
import { outcomes } from '../../form/schema.ts'
import type { OtherBook } from '../../book/others.ts'
import { everyBook, type Filter } from '../../book/rows.ts'
import { statuses, type Entry, type Status } from '../../book/entry-schema.ts'
import { orders, type Order } from '../../book/search.ts'
import { today } from '../../job/empty.ts'
import { Icon } from '../parts/icons.tsx'
import { ChoiceField, TextField } from './field.tsx'
import { dayLength, keptAhead, keptSoon } from './kept-days.ts'
import { kindWords } from './note-words.ts'
import { statusWords } from './status-words.tsx'
import { useDismiss } from './use-dismiss.ts'
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

type Kept = '' | 'any' | 'passed' | 'soon'

const keptOptions: readonly (readonly [Kept, string])[] = [
  ['', say`not asked`],
  ['any', say`any day`],
  ['passed', say`the day has passed`],
  ['soon', say`it has passed, or passes within ${keptAhead} days`],
]

const keptFilter: Record<Kept, () => Filter> = {
  '': () => ({}),
  any: () => ({ kept: true }),
  passed: () => ({ keptTo: today(new Date(Date.now() - dayLength)) }),
  soon: () => ({ keptTo: keptSoon() }),
}

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
  const further = useDismiss()
  const hidden = [filter.kept || filter.keptTo, filter.testedFrom, filter.testedTo].filter(Boolean).length
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
          placeholder={say`street, job, tester, device`}
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
      <details class="menu further" ref={further}>
        <summary class="b low">
          {say`More`}
          {hidden > 0 && ` (${hidden})`}
        </summary>
        <div class="items">
          <ChoiceField
            label={say`Keep the record until`}
            value={
              filter.keptTo === undefined ? (filter.kept ? 'any' : '') : filter.keptTo <= today() ? 'passed' : 'soon'
            }
            options={keptOptions}
            onPick={(asked) => {
              const { kept: _, keptTo: __, ...rest } = filter
              onChange({ ...rest, text, ...keptFilter[asked]() })
              if (asked) onOrder('kept shortest')
            }}
          />
          <TextField
            label={say`Tested from`}
            type="date"
            value={filter.testedFrom ?? ''}
            onInput={(testedFrom) => set({ testedFrom })}
          />
          <TextField
            label={say`Tested to`}
            type="date"
            value={filter.testedTo ?? ''}
            onInput={(testedTo) => set({ testedTo })}
          />
        </div>
      </details>
      <ChoiceField
        label={say`Order`}
        value={order}
        options={orders.map((one) => [one, one === 'kept shortest' ? say`kept shortest first` : shown(one)] as const)}
        onPick={onOrder}
      />
    </>
  )
}
