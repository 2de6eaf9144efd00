import { isPattern } from '../../form/dates.ts'
import type { Item } from '../../form/material.ts'
import type { Clues, Write } from '../../form/schema.ts'
import { unitsLike } from '../../units/convert.ts'
import { symbol } from '../../units/symbol.ts'
import { ChoiceField, TextField } from './field.tsx'
import { say, shown } from '../../words/say.ts'

type Grouping = NonNullable<Write['grouping']>

const grouping: readonly (readonly [Grouping, string])[] = [
  ['', say`none: 15810`],
  [',', say`comma: 15,810`],
  ['.', say`point: 15.810`],
  [' ', say`space: 15 810`],
  ["'", say`apostrophe: 15’810`],
]
const marks = [
  ['.', say`point: 2.86`],
  [',', say`comma: 2,86`],
] as const
const roundings = [
  ['half-up', say`half away from zero`],
  ['half-even', say`half to the even digit`],
] as const
const patterns = ['MM/dd/yyyy', 'M/d/yyyy', 'yyyy-MM-dd', 'dd/MM/yyyy', 'dd.MM.yyyy', 'MM-dd-yyyy', 'MM/dd/yy']

interface Props {
  write: Write
  /** The item that is written, when one is known. */
  item: Item | undefined
  control: Clues
  onChange: (write: Write) => void
}

/** How an item is written: what does not apply to its kind is not asked. */
export function WriteFields({ write, item, control, onChange }: Props) {
  const kind = item?.kind ?? guess(write)
  const set = (patch: Write) => onChange({ ...write, ...patch })
  if (kind === 'quantity') return <QuantityFields write={write} item={item} set={set} />
  if (kind === 'date') {
    return (
      <>
        <TextField
          label={say`Date pattern`}
          value={write.date ?? ''}
          placeholder={say`yyyy-MM-dd`}
          list="date-patterns"
          hint={
            write.date && !isPattern(write.date)
              ? say`“${write.date}” is no date pattern: use yyyy or yy, MM or M, dd or d, each once, and no names of months.`
              : say`yyyy year, MM month, dd day; M and d without a zero in front`
          }
          onInput={(date) => set({ date })}
        />
        <datalist id="date-patterns">
          {patterns.map((pattern) => (
            <option key={pattern} value={pattern} />
          ))}
        </datalist>
      </>
    )
  }
  if (kind === 'choice' && item?.kind === 'choice') {
    return <ChoiceFields write={write} item={item} control={control} set={set} />
  }
  return null
}

function guess(write: Write): Item['kind'] {
  if (write.unit !== undefined || write.decimals !== undefined) return 'quantity'
  if (write.date !== undefined) return 'date'
  return write.choices === undefined ? 'text' : 'choice'
}

interface Part {
  write: Write
  item: Item | undefined
  set: (patch: Write) => void
}

function QuantityFields({ write, item, set }: Part) {
  const own = item?.kind === 'quantity' ? item : undefined
  const unit = write.unit ?? own?.unit
  const units = unit ? unitsLike(unit) : []
  const decimals = write.decimals ?? own?.decimals ?? 0
  return (
    <>
      {unit !== undefined && units.length > 1 && (
        <ChoiceField
          label={say`Unit`}
          value={unit}
          options={units.map((id) => [id, symbol(id)] as const)}
          onPick={(picked) => set({ unit: picked })}
        />
      )}
      <ChoiceField
        label={say`Decimals`}
        value={String(decimals)}
        options={Array.from({ length: 7 }, (_, number) => [String(number), String(number)] as const)}
        onPick={(picked) => set({ decimals: Number(picked) })}
      />
      <ChoiceField
        label={say`Thousands`}
        value={write.grouping ?? ''}
        options={grouping}
        onPick={(picked) => set({ grouping: picked })}
      />
      <ChoiceField
        label={say`Decimal mark`}
        value={write.mark ?? '.'}
        options={marks}
        onPick={(mark) => set({ mark })}
      />
      <ChoiceField
        label={say`Rounding`}
        value={write.rounding ?? 'half-up'}
        options={roundings}
        onPick={(rounding) => set({ rounding })}
      />
    </>
  )
}

function ChoiceFields({
  write,
  item,
  control,
  set,
}: Part & { item: Extract<Item, { kind: 'choice' }>; control: Clues }) {
  const pick = (value: string, option: string) => {
    const { [value]: _, ...others } = write.choices ?? {}
    set({ choices: option ? { ...others, [value]: option } : others })
  }
  return (
    <>
      {item.options.map(({ value, label }) => {
        const chosen = write.choices?.[value] ?? ''
        const offered = chosen && !control.options.includes(chosen) ? [chosen, ...control.options] : control.options
        return control.options.length > 0 ? (
          <ChoiceField
            key={value}
            label={say`${shown(label)} stands for`}
            value={chosen}
            options={[['', say`the option “${label}”`], ...offered.map((option) => [option, option] as const)]}
            onPick={(option) => pick(value, option)}
          />
        ) : (
          <TextField
            key={value}
            label={say`${shown(label)} is written as`}
            value={chosen}
            placeholder={label}
            onInput={(option) => pick(value, option)}
          />
        )
      })}
    </>
  )
}
