import type { Building, TypedUnits } from '../../job/schema.ts'
import { Choice } from './choice.tsx'
import { Field } from './field.tsx'
import type { Offer } from './sheet-fields.tsx'
import { areaWords, volumeWords } from '../../results/unit-words.ts'
import { say } from '../../words/say.ts'

interface Props {
  building: Building
  length: TypedUnits['length']
  found: (path: string) => string | undefined
  offer: Offer
  onBuilding: (patch: Partial<Building>) => void
}

const sources = [
  ['', say`not said`],
  ['plans', say`plans`],
  ['measured', say`measured`],
  ['estimated', say`estimated`],
] as const

const volumes = [
  ['', say`not said`],
  ['net', say`net: air within walls and floors`],
  ['gross', say`gross: to the outside faces`],
] as const

/** How large the building is, and where it stands in the climate. */
export function SizeFields({ building, length, found, offer, onBuilding }: Props) {
  const { shows, fixed } = offer
  const field = (key: keyof Building, label: string, more: { unit?: string; hint?: string; numeric?: false } = {}) =>
    shows(key) && (
      <Field
        label={label}
        numeric
        fixed={fixed(key)}
        value={building[key] ?? ''}
        problem={found(`building.${key}`)}
        onInput={(value) => onBuilding({ [key]: value })}
        {...more}
      />
    )
  return (
    <>
      {field('volume', say`Volume`, { unit: volumeWords[length] })}
      {shows('volumeBasis') && (
        <Choice
          label={say`The volume is`}
          fixed={fixed('volumeBasis')}
          value={building.volumeBasis ?? ''}
          options={volumes}
          onPick={(volumeBasis) => onBuilding({ volumeBasis })}
        />
      )}
      {field('floorArea', say`Conditioned floor area`, { unit: areaWords[length] })}
      {field('enclosureArea', say`Enclosure area, six sides`, { unit: areaWords[length] })}
      {field('enclosureAreaWithoutFloor', say`Enclosure area without the lowest floor`, { unit: areaWords[length] })}
      {field('height', say`Height, lowest floor to highest ceiling`, { unit: length })}
      {shows('areaSource') && (
        <Choice
          label={say`Areas and volume from`}
          fixed={fixed('areaSource')}
          value={building.areaSource}
          options={sources}
          onPick={(areaSource) => onBuilding({ areaSource })}
        />
      )}
      {field('volumePercent', say`Their uncertainty`, { unit: '%' })}
      {field('bedrooms', say`Bedrooms`)}
      {field('stories', say`Stories`)}
      {field('climateZone', say`Climate zone`, { hint: '5A', numeric: false })}
      {field('elevation', say`Elevation`, { unit: length })}
      {field('weatherShieldingFactor', say`Weather and shielding factor (wsf)`)}
    </>
  )
}
