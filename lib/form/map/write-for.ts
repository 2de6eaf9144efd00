/** How a value would be written into a control, as far as the page shows it. */
import { convert } from '../../units/convert.ts'
import { write as writeNumber } from '../../units/write.ts'
import { answersIn, apart, choose, chooseAmong } from '../choose.ts'
import { optionsOf } from '../page/clues.ts'
import type { Control } from '../page/controls.ts'
import { datePatternIn, decimalsIn } from '../page/hints.ts'
import { dateKinds, optionKinds } from '../kind-traits.ts'
import type { Item, Quantity } from '../material.ts'
import type { Write } from '../schema.ts'
import { unitIn, unitsAgree } from './unit-in.ts'

/** Decimals that let the text fit into the control's length. */
function shortened(item: Quantity, write: Write, limit: number): Write {
  let decimals = write.decimals ?? item.decimals
  const value = convert(item.value, item.unit, write.unit ?? item.unit)
  while (decimals > 0 && writeNumber(value, { decimals }).length > limit) decimals--
  return { ...write, decimals }
}

/** Which option stands for which text: for the one of this job, and for each that another may have. */
function forEach(text: string, options: readonly string[]): Record<string, string> {
  const real = answersIn(options)
  const choices = Object.fromEntries(apart(real).map((own, at) => [own, real[at] ?? '']))
  const chosen = chooseAmong(text, real)
  return chosen === undefined ? choices : { ...choices, [text]: chosen }
}

export function writeFor(item: Item, control: Control): Write {
  switch (item.kind) {
    case 'quantity': {
      const unit = unitIn(control.name) ?? unitIn((control.element as HTMLInputElement).placeholder ?? '')
      const write: Write = {
        unit: unit !== undefined && unitsAgree(item, unit) ? unit : item.unit,
        decimals: decimalsIn(control) ?? item.decimals,
        rounding: 'half-up',
      }
      const limit = (control.element as HTMLInputElement).maxLength ?? -1
      return limit > 0 ? shortened(item, write, limit) : write
    }
    case 'date':
      return dateKinds.has(control.kind) || control.kind === 'month' ? {} : { date: datePatternIn(control) }
    case 'choice': {
      if (!optionKinds.has(control.kind)) return {}
      const options = optionsOf(control)
      const choices: Record<string, string> = {}
      for (const { value, label } of item.options) {
        const option = choose(label, [value], options)
        if (option !== undefined) choices[value] = option
      }
      return { choices }
    }
    case 'text':
      return optionKinds.has(control.kind) ? { choices: forEach(item.text, optionsOf(control)) } : {}
  }
}
