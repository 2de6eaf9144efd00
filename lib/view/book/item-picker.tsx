import type { Item } from '../../form/material.ts'
import { itemWords, type KnownItems } from './known-items.ts'
import { labelWords, roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'
import { useId } from '../parts/use-id.ts'

interface Props {
  label: string
  item: string
  items: KnownItems
  onPick: (id: string, item: Item | undefined) => void
}

/** Chooses a figure or field, listed under its test or heading. */
export function ItemPicker({ label, item, items, onPick }: Props) {
  const id = useId()
  const groups = Map.groupBy(items, ([, known]) => known.group)
  return (
    <div class="fld">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={item}
        onChange={(event) => onPick(event.currentTarget.value, items.get(event.currentTarget.value))}
      >
        {!items.has(item) && (
          <option value={item}>
            {item ? say`${itemWords(item, items)} (in none of the newest jobs)` : say`choose`}
          </option>
        )}
        {[...groups].map(([group, members]) => (
          <optgroup key={group} label={roleWords(group)}>
            {members.map(([key, known]) => (
              <option key={key} value={key}>
                {labelWords(known.label)}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </div>
  )
}

/** How an item is written when nothing was chosen yet. */
export function usualWrite(item: Item | undefined) {
  if (item?.kind === 'quantity') return { unit: item.unit, decimals: item.decimals }
  return item?.kind === 'date' ? { date: 'MM/dd/yyyy' } : {}
}
