import type { Quantity } from '../../form/material.ts'
import type { Write } from '../../form/schema.ts'
import { unitsLike } from '../../units/convert.ts'
import { symbol } from '../../units/symbol.ts'
import { Pick } from './pick.tsx'
import { say } from '../../words/say.ts'

interface NumberFieldsProps {
  quantity: Quantity
  write: Write
  /** The control is a number box: the browser itself writes separators and marks. */
  plain: boolean
  onChange: (write: Write) => void
}

const places = [0, 1, 2, 3, 4, 5, 6]

export function NumberFields({ quantity, write, plain, onChange }: NumberFieldsProps) {
  const units = unitsLike(quantity.unit)
  return (
    <div class="fmt">
      {units.length > 1 && (
        <Pick
          label={say`Unit`}
          value={write.unit ?? quantity.unit}
          options={units.map((unit) => ({ value: unit, label: symbol(unit) || say`plain number` }))}
          onChange={(unit) => onChange({ ...write, unit })}
        />
      )}
      <Pick
        label={say`Decimals`}
        value={String(write.decimals ?? quantity.decimals)}
        options={places.map((count) => ({ value: String(count), label: String(count) }))}
        onChange={(count) => onChange({ ...write, decimals: Number(count) })}
      />
      <Pick
        label={say`Rounding`}
        value={write.rounding ?? 'half-up'}
        options={[
          { value: 'half-up', label: say`half up` },
          { value: 'half-even', label: say`half to even` },
        ]}
        onChange={(rounding) => onChange({ ...write, rounding })}
      />
      {!plain && (
        <>
          <Pick
            label={say`Thousands`}
            value={write.grouping ?? ''}
            options={[
              { value: '', label: '1234' },
              { value: ',', label: '1,234' },
              { value: '.', label: '1.234' },
              { value: ' ', label: '1 234' },
              { value: "'", label: "1'234" },
            ]}
            onChange={(grouping) =>
              onChange({
                ...write,
                grouping,
                // The same character cannot stand for both.
                ...(grouping === (write.mark ?? '.') && { mark: grouping === '.' ? ',' : '.' }),
              })
            }
          />
          <Pick
            label={say`Decimal mark`}
            value={write.mark ?? '.'}
            options={[
              { value: '.', label: '0.5' },
              { value: ',', label: '0,5' },
            ]}
            onChange={(mark) => onChange({ ...write, mark, ...(mark === write.grouping && { grouping: '' }) })}
          />
        </>
      )}
    </div>
  )
}
