import type { Building } from '../../job/schema.ts'
import { Choice } from './choice.tsx'
import { Field } from './field.tsx'
import { useBuildingProblem, useDeskContext } from './use-context.ts'
import { areaWords, volumeWords } from './unit-words.ts'

const sources = [
  ['', 'not said'],
  ['plans', 'plans'],
  ['measured', 'measured'],
  ['estimated', 'estimated'],
] as const

/** Where the building stands and how large it is. */
export function BuildingFields() {
  const { job, editBuilding } = useDeskContext()
  const problem = useBuildingProblem()
  const { building, units } = job
  const text = (key: keyof Building, label: string, more: { wide?: boolean; hint?: string } = {}) => (
    <Field label={label} value={building[key]} onInput={(value) => editBuilding({ [key]: value })} {...more} />
  )
  const number = (key: keyof Building, label: string, unit?: string, hint?: string) => (
    <Field
      label={label}
      numeric
      value={building[key]}
      problem={problem(key)}
      onInput={(value) => editBuilding({ [key]: value })}
      {...(unit && { unit })}
      {...(hint && { hint })}
    />
  )
  return (
    <div class="fields">
      {text('street', 'Street address', { wide: true })}
      {text('unit', 'Unit or lot')}
      {text('town', 'Town')}
      {text('state', 'State')}
      {text('postcode', 'ZIP or postcode')}
      {text('permit', 'Permit number')}
      {text('program', 'Program number')}
      {text('builder', 'Builder or contractor', { wide: true })}
      {number('volume', 'Volume', volumeWords[units.length])}
      {number('floorArea', 'Conditioned floor area', areaWords[units.length])}
      {number('enclosureArea', 'Enclosure area, six sides', areaWords[units.length])}
      {number('height', 'Height, lowest floor to highest ceiling', units.length)}
      <Choice
        label="Areas and volume from"
        value={building.areaSource}
        options={sources}
        onPick={(areaSource) => editBuilding({ areaSource })}
      />
      {number('volumePercent', 'Their uncertainty', '%')}
      {number('bedrooms', 'Bedrooms')}
      {number('stories', 'Stories')}
      {text('climateZone', 'Climate zone', { hint: '5A' })}
      {number('elevation', 'Elevation', units.length)}
      {number('weatherShieldingFactor', 'Weather and shielding factor (wsf)')}
    </div>
  )
}
