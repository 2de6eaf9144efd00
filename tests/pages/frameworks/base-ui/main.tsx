/** @jsxImportSource react */
import { Checkbox } from '@base-ui/react/checkbox'
import { Combobox } from '@base-ui/react/combobox'
import { Field } from '@base-ui/react/field'
import { NumberField } from '@base-ui/react/number-field'
import { Radio } from '@base-ui/react/radio'
import { RadioGroup } from '@base-ui/react/radio-group'
import { Select } from '@base-ui/react/select'
import { Slider } from '@base-ui/react/slider'
import { Switch } from '@base-ui/react/switch'
import { useState } from 'react'
import { createRoot } from 'react-dom/client'

const look = document.createElement('style')
look.textContent =
  'form > * { display: block; margin: 12px } [role=checkbox], [role=radio], [role=switch] { display: inline-block; width: 20px; height: 20px; border: 1px solid; vertical-align: middle } [data-checked] { background: teal } [role=listbox] { background: white; border: 1px solid }'
document.head.append(look)

const ranges = { a: 'wide range', b: 'middle range' }
const towns = ['Marrowby', 'Osier Bend', 'Larch Falls']

function App() {
  const [street, setStreet] = useState('')
  const [flow, setFlow] = useState<number | null>(null)
  const [range, setRange] = useState<string | null>('')
  const [town, setTown] = useState<string | null>(null)
  const [result, setResult] = useState<unknown>('')
  const [sealed, setSealed] = useState(false)
  const [fan, setFan] = useState(false)
  const [floors, setFloors] = useState<number | readonly number[]>(1)
  window.pageState = () => ({ street, flow, range, town, result, sealed, fan, floors })
  return (
    <form style={{ width: 460, padding: 20 }}>
      <Field.Root>
        <Field.Label>Street address</Field.Label>
        <Field.Control value={street} onValueChange={setStreet} />
      </Field.Root>
      <Field.Root>
        <Field.Label>CFM50</Field.Label>
        <NumberField.Root value={flow} onValueChange={setFlow}>
          <NumberField.Group>
            <NumberField.Decrement>−</NumberField.Decrement>
            <NumberField.Input />
            <NumberField.Increment>+</NumberField.Increment>
          </NumberField.Group>
        </NumberField.Root>
      </Field.Root>
      <Field.Root>
        <Field.Label nativeLabel={false} render={<div />}>
          Range
        </Field.Label>
        <Select.Root items={ranges} value={range} onValueChange={setRange}>
          <Select.Trigger style={{ minWidth: 200 }}>
            <Select.Value />
          </Select.Trigger>
          <Select.Portal>
            <Select.Positioner>
              <Select.Popup>
                <Select.List>
                  {Object.entries(ranges).map(([value, label]) => (
                    <Select.Item key={value} value={value}>
                      <Select.ItemText>{label}</Select.ItemText>
                    </Select.Item>
                  ))}
                </Select.List>
              </Select.Popup>
            </Select.Positioner>
          </Select.Portal>
        </Select.Root>
      </Field.Root>
      <Field.Root>
        <Combobox.Root items={towns} value={town} onValueChange={setTown}>
          <Field.Label>Town</Field.Label>
          <Combobox.Input />
          <Combobox.Portal>
            <Combobox.Positioner>
              <Combobox.Popup>
                <Combobox.List>
                  {(item: string) => (
                    <Combobox.Item key={item} value={item}>
                      {item}
                    </Combobox.Item>
                  )}
                </Combobox.List>
              </Combobox.Popup>
            </Combobox.Positioner>
          </Combobox.Portal>
        </Combobox.Root>
      </Field.Root>
      <div>
        <span id="result">Result</span>
        <RadioGroup aria-labelledby="result" value={result} onValueChange={setResult}>
          {['Pass', 'Fail'].map((each) => (
            <label key={each}>
              <Radio.Root value={each} /> {each}
            </label>
          ))}
        </RadioGroup>
      </div>
      <label>
        <Checkbox.Root checked={sealed} onCheckedChange={setSealed} /> Attic sealed
      </label>
      <label>
        <Switch.Root checked={fan} onCheckedChange={setFan} /> Ventilation present
      </label>
      <div>
        <span id="floors">Stories</span>
        <Slider.Root value={floors} onValueChange={setFloors} min={1} max={4} aria-labelledby="floors">
          <Slider.Control style={{ height: 20, width: 200 }}>
            <Slider.Track style={{ height: 4, background: 'silver' }}>
              <Slider.Indicator />
              <Slider.Thumb style={{ width: 16, height: 16, background: 'teal' }} />
            </Slider.Track>
          </Slider.Control>
        </Slider.Root>
      </div>
    </form>
  )
}

const root = document.createElement('div')
document.body.append(root)
createRoot(root).render(<App />)
