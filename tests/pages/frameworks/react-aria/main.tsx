/** @jsxImportSource react */
import { parseDate } from '@internationalized/date'
import { useState, type ComponentProps } from 'react'
import {
  Button,
  Calendar,
  CalendarCell,
  CalendarGrid,
  Checkbox,
  ComboBox,
  DateField,
  DateInput,
  DatePicker,
  DateSegment,
  Dialog,
  Group,
  Heading,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  NumberField,
  Popover,
  Radio,
  RadioGroup,
  Select,
  SelectValue,
  Slider,
  SliderOutput,
  SliderThumb,
  SliderTrack,
  Switch,
  TextArea,
  TextField,
} from 'react-aria-components'
import { createRoot } from 'react-dom/client'

type Segment = ComponentProps<typeof DateSegment>['segment']
type Held = Exclude<ComponentProps<typeof DateField>['value'], undefined>
type Day = ComponentProps<typeof CalendarCell>['date']

const ranges: Record<string, string> = { a: 'wide range', b: 'middle range' }
const towns = ['Marrowby', 'Osier Bend', 'Larch Falls']

function App() {
  const [date, setDate] = useState<Held>(null)
  const [permit, setPermit] = useState<Held>(parseDate('2025-12-30'))
  const [street, setStreet] = useState('')
  const [flow, setFlow] = useState(Number.NaN)
  const [range, setRange] = useState<string | number | null>(null)
  const [town, setTown] = useState<string | number | null>(null)
  const [result, setResult] = useState('')
  const [sealed, setSealed] = useState(false)
  const [fan, setFan] = useState(false)
  const [floors, setFloors] = useState<number | number[]>(1)
  const [comments, setComments] = useState('')
  window.pageState = () => ({
    date: date?.toString() ?? '',
    permit: permit?.toString() ?? '',
    street,
    flow: Number.isNaN(flow) ? null : flow,
    range: range ?? '',
    town: town ?? '',
    result,
    sealed,
    fan,
    floors,
    comments,
  })
  return (
    <form style={{ width: 460, padding: 20, display: 'grid', gap: 14 }}>
      <DateField value={date} onChange={setDate}>
        <Label>Test date</Label>
        <DateInput style={{ display: 'flex' }}>{(segment: Segment) => <DateSegment segment={segment} />}</DateInput>
      </DateField>
      <DatePicker value={permit} onChange={setPermit}>
        <Label>Date of permit</Label>
        <Group style={{ display: 'flex' }}>
          <DateInput style={{ display: 'flex' }}>{(segment: Segment) => <DateSegment segment={segment} />}</DateInput>
          <Button>▾</Button>
        </Group>
        <Popover>
          <Dialog>
            <Calendar>
              <Button slot="previous">‹</Button>
              <Heading />
              <Button slot="next">›</Button>
              <CalendarGrid>{(day: Day) => <CalendarCell date={day} />}</CalendarGrid>
            </Calendar>
          </Dialog>
        </Popover>
      </DatePicker>
      <TextField value={street} onChange={setStreet}>
        <Label>Street address</Label>
        <Input />
      </TextField>
      <NumberField value={flow} onChange={setFlow}>
        <Label>CFM50</Label>
        <Group>
          <Button slot="decrement">−</Button>
          <Input />
          <Button slot="increment">+</Button>
        </Group>
      </NumberField>
      <Select value={range} onChange={(key: unknown) => setRange(key as string | number | null)}>
        <Label>Range</Label>
        <Button>
          <SelectValue />
        </Button>
        <Popover>
          <ListBox>
            {Object.entries(ranges).map(([id, label]) => (
              <ListBoxItem key={id} id={id}>
                {label}
              </ListBoxItem>
            ))}
          </ListBox>
        </Popover>
      </Select>
      <ComboBox value={town} onChange={(key: unknown) => setTown(key as string | number | null)}>
        <Label>Town</Label>
        <Input />
        <Button>▾</Button>
        <Popover>
          <ListBox>
            {towns.map((each) => (
              <ListBoxItem key={each} id={each}>
                {each}
              </ListBoxItem>
            ))}
          </ListBox>
        </Popover>
      </ComboBox>
      <RadioGroup value={result} onChange={setResult}>
        <Label>Result</Label>
        <Radio value="Pass">Pass</Radio>
        <Radio value="Fail">Fail</Radio>
      </RadioGroup>
      <Checkbox isSelected={sealed} onChange={setSealed}>
        Attic sealed
      </Checkbox>
      <Switch isSelected={fan} onChange={setFan}>
        Ventilation present
      </Switch>
      <Slider value={floors} onChange={setFloors} minValue={1} maxValue={4}>
        <Label>Stories</Label>
        <SliderOutput />
        <SliderTrack style={{ height: 24, width: 240, background: 'silver' }}>
          <SliderThumb style={{ width: 20, height: 20, background: 'teal', top: 12 }} />
        </SliderTrack>
      </Slider>
      <TextField value={comments} onChange={setComments}>
        <Label>Comments</Label>
        <TextArea />
      </TextField>
    </form>
  )
}

const root = document.createElement('div')
document.body.append(root)
createRoot(root).render(<App />)
