interface PickProps<Value extends string> {
  label: string
  value: Value
  options: readonly { value: Value; label: string }[]
  wide?: boolean
  /** The label is for those who do not see the table around it. */
  hidden?: boolean
  onChange: (value: Value) => void
}

/** A labelled choice of a few. */
export function Pick<Value extends string>({ label, value, options, wide, hidden, onChange }: PickProps<Value>) {
  return (
    <label class={wide ? 'wide' : ''}>
      <span class={hidden ? 'vh' : 'lab'}>{label}</span>
      <select
        class="box"
        value={value}
        onChange={(event) => {
          const chosen = options[event.currentTarget.selectedIndex]
          if (chosen) onChange(chosen.value)
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === value}>
            {option.label}
          </option>
        ))}
      </select>
    </label>
  )
}
