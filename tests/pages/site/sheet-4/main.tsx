/** @jsxImportSource react */
import { useState, type ChangeEvent, type FormEvent, type ReactNode } from 'react'
import { flushSync } from 'react-dom'
import { createRoot } from 'react-dom/client'

const initial = {
  permit: 'MB-2025-1183',
  site: '',
  town: '',
  builder: '',
  company: '',
  tester: '',
  licence: '',
  licenceExpiry: '',
  floorArea: '',
  volume: '',
  zone: '',
  date: '',
  method: '',
  direction: '',
  cfm50: '',
  ach50: '',
  exponent: '',
  ela: '',
  indoor: '',
  outdoor: '',
  result: '',
  ductLeakage: '',
  ductStage: '',
  cfm25: '',
  cfm25PerArea: '',
  ventilation: false,
  remarks: '',
  certify: false,
  signature: '',
}
type State = typeof initial
type TextName = { [Name in keyof State]: State[Name] extends string ? Name : never }[keyof State]
type TickName = Exclude<keyof State, TextName>

interface PageWindow extends Window {
  pageState: () => State
  submitted: number
}
const page = window as unknown as PageWindow
page.submitted = 0

interface Props {
  state: State
  set: (change: Partial<State>) => void
}

interface FieldProps extends Props {
  name: TextName
  label: string
  hint?: string
}

function Labelled({ name, label, hint, children }: FieldProps & { children: ReactNode }) {
  return (
    <div className="field">
      <label htmlFor={name}>{label}</label>
      {children}
      {hint !== undefined && <p className="hint">{hint}</p>}
    </div>
  )
}

function Text(props: FieldProps & { type?: 'text' | 'date' | 'number'; step?: string }) {
  const { name, state, set, type = 'text', step } = props
  return (
    <Labelled {...props}>
      <input
        id={name}
        type={type}
        step={step}
        value={state[name]}
        autoComplete="off"
        onChange={(event) => set({ [name]: event.target.value })}
      />
    </Labelled>
  )
}

/** A text input for numbers that puts the old text back when the new one is not a number. */
function Masked(props: FieldProps) {
  const { name, state, set } = props
  const change = (event: ChangeEvent<HTMLInputElement>) => {
    if (/^-?\d*(\.\d*)?$/.test(event.target.value)) set({ [name]: event.target.value })
  }
  return (
    <Labelled {...props}>
      <input id={name} inputMode="decimal" value={state[name]} autoComplete="off" onChange={change} />
    </Labelled>
  )
}

function Select(props: FieldProps & { options: [string, string][] }) {
  const { name, state, set, options } = props
  return (
    <Labelled {...props}>
      <select id={name} value={state[name]} onChange={(event) => set({ [name]: event.target.value })}>
        <option value="">Select</option>
        {options.map(([value, label]) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </Labelled>
  )
}

function Radios({ name, label, state, set, options }: FieldProps & { options: [string, string][] }) {
  return (
    <div className="field" role="radiogroup" aria-labelledby={`${name}-label`}>
      <span className="group-label" id={`${name}-label`}>
        {label}
      </span>
      <div className="choices">
        {options.map(([value, words]) => (
          <label className="choice" key={value}>
            <input
              type="radio"
              name={name}
              value={value}
              checked={state[name] === value}
              onChange={() => set({ [name]: value })}
            />{' '}
            {words}
          </label>
        ))}
      </div>
    </div>
  )
}

function Tick({ name, label, state, set }: Props & { name: TickName; label: string }) {
  return (
    <div className="field">
      <label className="choice">
        <input type="checkbox" checked={state[name]} onChange={(event) => set({ [name]: event.target.checked })} />{' '}
        {label}
      </label>
    </div>
  )
}

function Section({ legend, children }: { legend: string; children: ReactNode }) {
  return (
    <fieldset className="section">
      <legend>{legend}</legend>
      <div className="grid">{children}</div>
    </fieldset>
  )
}

const zones: [string, string][] = Array.from({ length: 9 }, (_, zone) => [`cz${zone}`, `Zone ${zone}`])

function Sheet() {
  const [state, setState] = useState(initial)
  const set = (change: Partial<State>) => setState((old) => ({ ...old, ...change }))
  const both = { state, set }
  page.pageState = () => structuredClone(state)

  const submit = async (event: FormEvent) => {
    event.preventDefault()
    page.submitted += 1
    await fetch(location.pathname, { method: 'POST', body: JSON.stringify(state) })
  }

  return (
    <form onSubmit={submit} noValidate>
      <Section legend="Permit and building">
        <Text {...both} name="permit" label="Permit number" />
        <Text {...both} name="site" label="Site address" />
        <Text {...both} name="town" label="City or town" />
        <Text {...both} name="builder" label="Builder" />
        <Masked {...both} name="floorArea" label="Conditioned floor area, ft²" />
        <Masked {...both} name="volume" label="Volume, ft³" />
        <Select {...both} name="zone" label="Climate zone" options={zones} />
      </Section>
      <Section legend="Testing">
        <Text {...both} name="company" label="Testing company" />
        <Text {...both} name="tester" label="Name of tester" />
        <Text {...both} name="licence" label="Licence number" />
        <Text {...both} name="licenceExpiry" label="Licence valid until" type="date" />
      </Section>
      <Section legend="Enclosure, final test">
        <Text {...both} name="date" label="Test date" type="date" />
        <Select
          {...both}
          name="method"
          label="Test procedure"
          options={[
            ['one', 'One-point'],
            ['e779', 'ASTM E779'],
            ['iso', 'ISO 9972'],
          ]}
        />
        <Radios
          {...both}
          name="direction"
          label="Direction"
          options={[
            ['d', 'Depressurize'],
            ['p', 'Pressurize'],
          ]}
        />
        <Masked {...both} name="cfm50" label="CFM50" hint="Digits only." />
        <Text {...both} name="ach50" label="ACH50" type="number" step="0.01" />
        <Text {...both} name="exponent" label="Flow exponent n" type="number" step="0.001" />
        <Text {...both} name="ela" label="Effective leakage area at 4 Pa, in²" type="number" step="0.1" />
        <Masked {...both} name="indoor" label="Indoor temperature, °F" />
        <Masked {...both} name="outdoor" label="Outdoor temperature, °F" />
        <Radios
          {...both}
          name="result"
          label="Result"
          options={[
            ['y', 'Pass'],
            ['n', 'Fail'],
          ]}
        />
      </Section>
      <Section legend="Ducts, system 1">
        <Radios
          {...both}
          name="ductLeakage"
          label="Leakage tested"
          options={[
            ['t', 'Total'],
            ['o', 'To outside'],
          ]}
        />
        <Select
          {...both}
          name="ductStage"
          label="Stage"
          options={[
            ['r', 'Rough-in'],
            ['rn', 'Rough-in without air handler'],
            ['f', 'Final'],
          ]}
        />
        <Masked {...both} name="cfm25" label="Duct leakage, CFM at 25 Pa" />
        <Text {...both} name="cfm25PerArea" label="CFM25 per 100 ft²" type="number" step="0.01" />
        <Tick {...both} name="ventilation" label="Mechanical ventilation present" />
      </Section>
      <Section legend="Remarks and signature">
        <div className="field wide">
          <label htmlFor="remarks">Remarks</label>
          <textarea
            id="remarks"
            rows={3}
            value={state.remarks}
            onChange={(event) => set({ remarks: event.target.value })}
          />
        </div>
        <Tick {...both} name="certify" label="I certify that the above is true" />
        <Text {...both} name="signature" label="Signature, full name" />
      </Section>
      <p className="actions">
        <button type="submit">Save sheet</button>
      </p>
    </form>
  )
}

flushSync(() => createRoot(document.getElementById('sheet')!).render(<Sheet />))
