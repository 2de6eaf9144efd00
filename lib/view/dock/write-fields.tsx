import type { Control } from '../../form/page/controls.ts'
import { dateKinds, numberKinds, optionKinds } from '../../form/kind-traits.ts'
import type { Item } from '../../form/material.ts'
import type { Write } from '../../form/schema.ts'
import { ChoiceFields } from './choice-fields.tsx'
import { DateField } from './date-field.tsx'
import { NumberFields } from './number-fields.tsx'

interface WriteFieldsProps {
  item: Item
  write: Write
  control: Control
  onChange: (write: Write) => void
}

/** How an item is written into a control: what can be chosen depends on the kind of item. */
export function WriteFields({ item, write, control, onChange }: WriteFieldsProps) {
  switch (item.kind) {
    case 'quantity':
      return <NumberFields quantity={item} write={write} plain={numberKinds.has(control.kind)} onChange={onChange} />
    case 'date':
      return dateKinds.has(control.kind) ? null : <DateField iso={item.iso} write={write} onChange={onChange} />
    case 'choice':
      return <ChoiceFields item={item} write={write} control={control} onChange={onChange} />
    case 'text':
      // A list is chosen from: which of its options stands for which text is said here and kept.
      return optionKinds.has(control.kind) ? (
        <ChoiceFields item={item} write={write} control={control} onChange={onChange} />
      ) : null
  }
}
