/** @jsxImportSource react */
import { useState, type FormEvent } from 'react'
import { flushSync } from 'react-dom'
import { createRoot } from 'react-dom/client'
import type { Field, Model } from '../field.ts'
import { sections, signing } from './fields.ts'

interface PageWindow extends Window {
  pageState: () => Model
  submitted: number
}
const page = window as unknown as PageWindow
page.submitted = 0

const all = [...sections, signing]
const initial: Model = Object.fromEntries(
  all.flatMap(({ fields }) => fields.map((f) => [f.name, f.kind === 'checkbox' ? false : (f.value ?? '')])),
)

interface Props {
  field: Field
  held: string | boolean
  set: (value: string | boolean) => void
}

function Tick({ field, held, set }: Props) {
  return (
    <div className="field">
      <label className="choice">
        <input type="checkbox" checked={held === true} onChange={(event) => set(event.target.checked)} /> {field.label}
      </label>
    </div>
  )
}

function Radios({ field, held, set }: Props) {
  return (
    <div className="field" role="radiogroup" aria-labelledby={`${field.name}-label`}>
      <span className="group-label" id={`${field.name}-label`}>
        {field.label}
      </span>
      <div className="choices">
        {field.options?.map(({ value, label }) => (
          <label className="choice" key={value}>
            <input type="radio" name={field.name} checked={held === value} onChange={() => set(value)} /> {label}
          </label>
        ))}
      </div>
    </div>
  )
}

function Input({ field, held, set }: Props) {
  const common = { id: field.name, value: String(held), autoComplete: 'off' }
  switch (field.kind) {
    case 'select':
      return (
        <select {...common} onChange={(event) => set(event.target.value)}>
          <option value="">Select</option>
          {field.options?.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      )
    case 'textarea':
      return <textarea {...common} rows={3} onChange={(event) => set(event.target.value)} />
    case 'masked':
      return (
        <input
          {...common}
          inputMode="decimal"
          onChange={(event) => {
            if (/^-?\d*(\.\d*)?$/.test(event.target.value)) set(event.target.value)
          }}
        />
      )
    default:
      return <input {...common} type={field.kind} step={field.step} onChange={(event) => set(event.target.value)} />
  }
}

function Labelled(props: Props) {
  const { name, label, kind, hint } = props.field
  return (
    <div className={kind === 'textarea' ? 'field wide' : 'field'}>
      <label htmlFor={name}>{label}</label>
      <Input {...props} />
      {hint !== undefined && <p className="hint">{hint}</p>}
    </div>
  )
}

function Sheet() {
  const [state, setState] = useState(initial)
  page.pageState = () => structuredClone(state)

  const submit = async (event: FormEvent) => {
    event.preventDefault()
    page.submitted += 1
    await fetch(location.pathname, { method: 'POST', body: JSON.stringify(state) })
  }

  return (
    <form onSubmit={submit} noValidate>
      {all.map(({ legend, fields }) => (
        <fieldset className="section" key={legend}>
          <legend>{legend}</legend>
          <div className="grid">
            {fields.map((field) => {
              const props: Props = {
                field,
                held: state[field.name] ?? '',
                set: (value) => setState((old) => ({ ...old, [field.name]: value })),
              }
              if (field.kind === 'checkbox') return <Tick key={field.name} {...props} />
              if (field.kind === 'radio') return <Radios key={field.name} {...props} />
              return <Labelled key={field.name} {...props} />
            })}
          </div>
        </fieldset>
      ))}
      <p className="actions">
        <button type="submit">Save sheet</button>
      </p>
    </form>
  )
}

flushSync(() => createRoot(document.getElementById('sheet')!).render(<Sheet />))
