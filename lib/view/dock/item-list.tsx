import { say } from '../../words/say.ts'

export interface ItemRow {
  id: string
  group: string
  label: string
  /** As it would be entered. */
  value: string
  /** Why it is proposed, or what else to know. */
  reason: string
}

interface ItemListProps {
  rows: readonly ItemRow[]
  chosen: string | undefined
  onChoose: (id: string) => void
  /** Shows the heading of each group; in a list of proposals the group stands before the label instead. */
  grouped?: boolean
}

/** Radio rows of a material's items with their present value at the right. */
export function ItemList({ rows, chosen, onChoose, grouped }: ItemListProps) {
  return (
    <>
      {rows.map((row, index) => (
        <div key={row.id}>
          {grouped && row.group !== rows[index - 1]?.group && <h3 class="gr">{row.group}</h3>}
          <label class={`op ${chosen === row.id ? 'on' : ''}`}>
            <input type="radio" name="source" checked={chosen === row.id} onChange={() => onChoose(row.id)} />
            <span>{grouped ? row.label : `${row.group}: ${row.label}`}</span>
            <span class="num">{row.value || <span class="q">{say`nothing yet`}</span>}</span>
            {row.reason && <small>{row.reason}</small>}
          </label>
        </div>
      ))}
    </>
  )
}
