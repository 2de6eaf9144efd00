import { useId, useState } from 'preact/hooks'

interface Props {
  label: string
  hint?: string
  value: string
  onInput: (value: string) => void
}

/** A passphrase, hidden unless one wants to see it. */
export function PassphraseField({ label, hint, value, onInput }: Props) {
  const id = useId()
  const [seen, setSeen] = useState(false)
  return (
    <div class="fld wide">
      <label for={id}>{label}</label>
      <input
        id={id}
        type={seen ? 'text' : 'password'}
        autocomplete="off"
        spellCheck={false}
        value={value}
        onInput={(event) => onInput(event.currentTarget.value)}
        aria-describedby={hint ? `${id}-hint` : undefined}
      />
      {hint && (
        <small id={`${id}-hint`} class="q">
          {hint}
        </small>
      )}
      <label class="show">
        <input type="checkbox" checked={seen} onChange={(event) => setSeen(event.currentTarget.checked)} /> Show it
      </label>
    </div>
  )
}
