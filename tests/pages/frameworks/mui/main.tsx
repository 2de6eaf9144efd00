/** @jsxImportSource react */
import Autocomplete from '@mui/material/Autocomplete'
import Checkbox from '@mui/material/Checkbox'
import FormControl from '@mui/material/FormControl'
import FormControlLabel from '@mui/material/FormControlLabel'
import FormLabel from '@mui/material/FormLabel'
import InputLabel from '@mui/material/InputLabel'
import MenuItem from '@mui/material/MenuItem'
import Radio from '@mui/material/Radio'
import RadioGroup from '@mui/material/RadioGroup'
import Select from '@mui/material/Select'
import Slider from '@mui/material/Slider'
import Switch from '@mui/material/Switch'
import TextField from '@mui/material/TextField'
import { AdapterDayjs } from '@mui/x-date-pickers/AdapterDayjs'
import { DateField } from '@mui/x-date-pickers/DateField'
import { LocalizationProvider } from '@mui/x-date-pickers/LocalizationProvider'
import type { Dayjs } from 'dayjs'
import { useState } from 'react'
import { createRoot } from 'react-dom/client'

const towns = ['Marrowby', 'Larch Falls', 'Tarn', 'Osier Bend']

function Page() {
  const [street, setStreet] = useState('')
  const [flow, setFlow] = useState('')
  const [date, setDate] = useState<Dayjs | null>(null)
  const [range, setRange] = useState('')
  const [town, setTown] = useState<string | null>(null)
  const [crew, setCrew] = useState<string | null>(null)
  const [places, setPlaces] = useState<string[]>([])
  const [hours, setHours] = useState<string[]>([])
  const [crews, setCrews] = useState<string[]>([])
  const [result, setResult] = useState('')
  const [sealed, setSealed] = useState(false)
  const [fan, setFan] = useState(false)
  const [floors, setFloors] = useState(1)
  window.pageState = () => ({
    street,
    flow,
    places,
    hours,
    date: date?.isValid() ? date.format('YYYY-MM-DD') : '',
    range,
    town,
    crew,
    result,
    sealed,
    fan,
    floors,
  })
  return (
    <LocalizationProvider dateAdapter={AdapterDayjs}>
      <form style={{ display: 'grid', gap: 16, width: 400, padding: 20 }}>
        <TextField label="Street address" value={street} onChange={(event) => setStreet(event.target.value)} />
        <TextField label="CFM50" type="number" value={flow} onChange={(event) => setFlow(event.target.value)} />
        <DateField label="Test date" value={date} onChange={setDate} />
        <FormControl>
          <InputLabel id="range-label">Range</InputLabel>
          <Select labelId="range-label" label="Range" value={range} onChange={(event) => setRange(event.target.value)}>
            <MenuItem value="a">wide range</MenuItem>
            <MenuItem value="b">middle range</MenuItem>
          </Select>
        </FormControl>
        <Autocomplete
          options={towns}
          value={town}
          onChange={(_, value) => setTown(value)}
          renderInput={(params) => <TextField {...params} label="Town" />}
        />
        <Autocomplete
          options={crews}
          value={crew}
          filterOptions={(all) => all}
          onInputChange={(_, text) =>
            setTimeout(
              () => setCrews(text ? ['North', 'South'].filter((one) => one.startsWith(text.slice(0, 3))) : []),
              250,
            )
          }
          onChange={(_, value) => setCrew(value)}
          renderInput={(params) => <TextField {...params} label="Crew" />}
        />
        <FormControl>
          <InputLabel id="places-label">Work locations</InputLabel>
          <Select
            multiple
            labelId="places-label"
            id="places"
            label="Work locations"
            value={places}
            onChange={({ target }) => setPlaces([target.value].flat())}
          >
            {['Attic', 'Crawl space', 'Rim joist'].map((place) => (
              <MenuItem key={place} value={place}>
                {place}
              </MenuItem>
            ))}
          </Select>
        </FormControl>
        <Autocomplete
          multiple
          options={['Morning', 'Noon', 'Evening']}
          value={hours}
          onChange={(_, value) => setHours(value)}
          renderInput={(params) => <TextField {...params} label="Hours" />}
        />
        <FormControl>
          <FormLabel id="result-label">Result</FormLabel>
          <RadioGroup aria-labelledby="result-label" value={result} onChange={(event) => setResult(event.target.value)}>
            <FormControlLabel value="pass" control={<Radio />} label="Pass" />
            <FormControlLabel value="fail" control={<Radio />} label="Fail" />
          </RadioGroup>
        </FormControl>
        <FormControlLabel
          control={<Checkbox checked={sealed} onChange={(event) => setSealed(event.target.checked)} />}
          label="Attic sealed"
        />
        <FormControlLabel
          control={<Switch checked={fan} onChange={(event) => setFan(event.target.checked)} />}
          label="Ventilation present"
        />
        <Slider
          aria-label="Stories"
          min={1}
          max={4}
          value={floors}
          onChange={(_, value) => setFloors(value as number)}
        />
      </form>
    </LocalizationProvider>
  )
}

const root = document.createElement('main')
document.body.append(root)
createRoot(root).render(<Page />)
