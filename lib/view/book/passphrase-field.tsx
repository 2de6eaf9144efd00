import { useId } from '../parts/use-id.ts'

interface Props {
  label: string
  hint?: string
  value: string
  onInput: (value: string) => void
}

/** A passphrase, which nobody else in the room reads. */
export function PassphraseField({ label, hint, value, onInput }: Props) {
  const id = useId()
  return (
    <div class="fld wide">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="password"
        autocomplete="off"
        value={value}
        onInput={(event) => onInput(event.currentTarget.value)}
        aria-describedby={hint ? `${id}-hint` : undefined}
      />
      {hint && (
        <small id={`${id}-hint`} class="q">
          {hint}
        </small>
      )}
    </div>
  )
}
