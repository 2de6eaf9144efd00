import { asRead } from '../../results/in-locale.ts'
import { Finding } from './finding.tsx'
import { useId } from '../parts/use-id.ts'

interface Props {
  label: string
  value: string
  onInput: (value: string) => void
  unit?: string
  hint?: string
  /** A finding about this field, in words. */
  problem?: string | undefined
  type?: 'text' | 'date' | 'tel' | 'email'
  numeric?: boolean
  wide?: boolean
  /** Shown, not to be changed. */
  fixed?: boolean | undefined
}

/** The longest text that a job keeps in one cell. */
export const longest = 10_000

/** A labelled field; the unit belongs to the label, a finding stands beneath. */
export function Field({ label, value, onInput, unit, hint, problem, type = 'text', numeric, wide, fixed }: Props) {
  const id = useId()
  return (
    <div class={wide ? 'fd-f wide' : 'fd-f'}>
      <label for={id}>
        {label}
        {unit && <span class="un">, {unit}</span>}
      </label>
      <input
        id={id}
        class={numeric ? 'in' : 'in words'}
        part="input"
        // The types of inputs are told apart by this attribute, which here is a variable.
        type={type as 'text'}
        autocomplete="off"
        maxLength={longest}
        readOnly={fixed}
        value={value}
        {...(hint && { placeholder: numeric ? asRead(hint) : hint })}
        {...(problem && { 'aria-invalid': true, 'aria-describedby': `${id}-found` })}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      {problem && <Finding id={`${id}-found`} text={problem} />}
    </div>
  )
}
