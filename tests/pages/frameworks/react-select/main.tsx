/** @jsxImportSource react */
import { useState } from 'react'
import { createRoot } from 'react-dom/client'
import Select from 'react-select'
import CreatableSelect from 'react-select/creatable'

interface Option {
  value: string
  label: string
}

const option = (label: string, value = label): Option => ({ label, value })
const ranges = [option('wide range', 'a'), option('middle range', 'b')]
const towns = Array.from({ length: 300 }, (_, at) => option(`Town ${at + 1}`))
const locations = ['Attic', 'Crawl space', 'Rim joist'].map((label) => option(label))

function App() {
  const [range, setRange] = useState<Option | null>(null)
  const [fixed, setFixed] = useState<Option | null>(null)
  const [town, setTown] = useState<Option | null>(null)
  const [places, setPlaces] = useState<readonly Option[]>([])
  const [tags, setTags] = useState<readonly Option[]>([])
  window.pageState = () => ({
    range: range?.value ?? '',
    fixed: fixed?.value ?? '',
    town: town?.value ?? '',
    places: places.map(({ value }) => value),
    tags: tags.map(({ value }) => value),
  })
  return (
    <form style={{ width: 460, padding: 20 }}>
      <label htmlFor="range">Range</label>
      <Select inputId="range" options={ranges} value={range} onChange={setRange} />
      <label htmlFor="fixed">Second range</label>
      <Select inputId="fixed" options={ranges} value={fixed} onChange={setFixed} isSearchable={false} />
      <label htmlFor="town">Town</label>
      <Select inputId="town" options={towns} value={town} onChange={setTown} />
      <label htmlFor="places">Work locations</label>
      <Select inputId="places" options={locations} value={places} onChange={setPlaces} isMulti />
      <label htmlFor="tags">Keywords</label>
      <CreatableSelect inputId="tags" value={tags} onChange={setTags} isMulti />
    </form>
  )
}

const root = document.createElement('div')
document.body.append(root)
createRoot(root).render(<App />)
