import type { CSSProperties } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Field, Widget } from '../../pdf/fields.ts'
import type { Called } from '../../pdf/names.ts'
import type { Held } from './values.ts'

interface FieldProps {
  field: Field
  called: Called
  held: Held
}

/** Where a widget stands on its page, whatever the page is zoomed to. */
const at = ({ box }: Widget, size = 0): CSSProperties => ({
  left: `calc(var(--zoom) * ${box.left}px)`,
  top: `calc(var(--zoom) * ${box.top}px)`,
  width: `calc(var(--zoom) * ${box.right - box.left}px)`,
  height: `calc(var(--zoom) * ${box.bottom - box.top}px)`,
  ...(size > 0 && { fontSize: `calc(var(--zoom) * ${size}px)` }),
})

/** The size of the letters: as the form says, else so that a line fits. */
const letters = ({ size, lines }: Field, { box }: Widget): number => {
  const height = Math.min(box.bottom - box.top, box.right - box.left)
  return Math.max(5, Math.min(size || 12, lines ? 12 : 0.75 * height))
}

/** A field as the control that it is; further places of the same field show what it holds. */
export function FieldControl({ field, called, held }: FieldProps) {
  const [first] = field.widgets
  if (!first) return null
  const { name, kind } = field
  const common = {
    name,
    'aria-label': called.name || undefined,
    title: field.tooltip || undefined,
    disabled: field.readOnly,
    ...(field.required && { 'aria-required': 'true' as const }),
  }
  if (kind === 'radio')
    return (
      <div role="radiogroup" aria-label={called.name || undefined}>
        {field.widgets.map((widget, index) =>
          widget.page === first.page ? (
            <input
              key={widget.id}
              {...common}
              type="radio"
              value={widget.on}
              aria-label={called.options[index] || undefined}
              defaultChecked={held.of(name) === widget.on}
              style={at(widget)}
              onChange={(event) => event.currentTarget.checked && held.set(name, widget.on)}
            />
          ) : null,
        )}
      </div>
    )
  if (kind === 'tick')
    return (
      <input
        {...common}
        type="checkbox"
        defaultChecked={held.of(name) === first.on}
        style={at(first)}
        onChange={(event) => held.set(name, event.currentTarget.checked ? first.on : '')}
      />
    )
  const style = { ...at(first, letters(field, first)), textAlign: field.align }
  if (kind === 'choice') {
    const value = held.of(name)
    const known = value.split('\n')
    return (
      <select
        {...common}
        style={style}
        multiple={field.several}
        onChange={(event) => {
          const chosen = [...event.currentTarget.selectedOptions].map((option) => option.value)
          held.set(name, chosen.filter(Boolean).join('\n'))
        }}
      >
        {!field.several && !field.options.some((option) => option.value === value) && (
          <option value={value} selected>
            {value}
          </option>
        )}
        {field.options.map((option) => (
          <option key={option.value} value={option.value} selected={known.includes(option.value)}>
            {option.label}
          </option>
        ))}
      </select>
    )
  }
  const typed = {
    ...common,
    style,
    defaultValue: held.of(name),
    ...(field.most > 0 && { maxLength: field.most }),
    spellcheck: false,
    autocomplete: 'off' as const,
  }
  return field.lines ? (
    <textarea {...typed} onInput={(event) => held.set(name, event.currentTarget.value)} />
  ) : (
    <input {...typed} type="text" onInput={(event) => held.set(name, event.currentTarget.value)} />
  )
}

/** What a field holds, at a further place where the form shows it. */
export function Mirror({ field, widget, held }: { field: Field; widget: Widget; held: Held }) {
  const [value, setValue] = useState(held.of(field.name))
  useEffect(() => held.listen((name) => name === field.name && setValue(held.of(name))), [field, held])
  const shown = field.kind === 'text' ? value : value === widget.on && value !== '' ? '×' : ''
  return (
    <span class="mirror" aria-hidden="true" style={at(widget, letters(field, widget))}>
      {shown}
    </span>
  )
}
