import type { ComponentChildren } from 'preact'
import { useId } from '../parts/use-id.ts'

type Common = { label: string; hint?: string | undefined; wide?: boolean; hideLabel?: boolean; disabled?: boolean }

type TextProps = Common & {
  value: string
  onInput: (value: string) => void
  type?: 'text' | 'date' | 'number' | 'search' | 'email' | 'tel'
  mode?: 'decimal' | 'numeric'
  placeholder?: string
  list?: string
  min?: number
  max?: number
}

/** A labelled field to type in. */
export function TextField({ label, hint, wide, hideLabel, value, onInput, type, mode, ...rest }: TextProps) {
  const id = useId()
  return (
    <div class={wide ? 'fld wide' : 'fld'}>
      <label for={id} class={hideLabel ? 'vh' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type={type ?? 'text'}
        inputMode={mode}
        autocomplete="off"
        value={value}
        onInput={(event) => onInput(event.currentTarget.value)}
        aria-describedby={hint ? `${id}-hint` : undefined}
        {...rest}
      />
      {hint && (
        <small id={`${id}-hint`} class="q">
          {hint}
        </small>
      )}
    </div>
  )
}

type ChoiceProps<T extends string> = Common & {
  value: T
  options: readonly (readonly [T, string])[]
  onPick: (value: T) => void
}

/** A labelled choice of one. */
export function ChoiceField<T extends string>({
  label,
  hint,
  wide,
  hideLabel,
  value,
  options,
  onPick,
  disabled,
}: ChoiceProps<T>) {
  const id = useId()
  return (
    <div class={wide ? 'fld wide' : 'fld'}>
      <label for={id} class={hideLabel ? 'vh' : undefined}>
        {label}
      </label>
      <select
        id={id}
        disabled={disabled}
        value={value}
        onChange={(event) => {
          const picked = options.find(([option]) => option === event.currentTarget.value)
          if (picked) onPick(picked[0])
        }}
        aria-describedby={hint ? `${id}-hint` : undefined}
      >
        {options.map(([option, words]) => (
          <option key={option} value={option}>
            {words}
          </option>
        ))}
      </select>
      {hint && (
        <small id={`${id}-hint`} class="q">
          {hint}
        </small>
      )}
    </div>
  )
}

/** What is said when there is nothing to list: what to do. */
export function Empty({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <div class="empty">
      <h2>{title}</h2>
      {children}
    </div>
  )
}

/** Something went wrong: what, and what to do. */
export function Trouble({ text }: { text: string }) {
  return text ? (
    <p class="trouble" role="alert">
      {text}
    </p>
  ) : null
}
