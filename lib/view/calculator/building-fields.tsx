import type { Building } from '../../job/schema.ts'
import { Field } from './field.tsx'
import { everything } from './sheet-fields.tsx'
import { SizeFields } from './size-fields.tsx'
import { useDeskContext, useFound } from './use-context.ts'

/** Where the building stands and how large it is. */
export function BuildingFields() {
  const { job, editBuilding } = useDeskContext()
  const { building, units } = job
  const text = (key: keyof Building, label: string, wide = false) => (
    <Field label={label} wide={wide} value={building[key]} onInput={(value) => editBuilding({ [key]: value })} />
  )
  return (
    <div class="fields">
      {text('street', 'Street address', true)}
      {text('unit', 'Unit or lot')}
      {text('town', 'Town')}
      {text('state', 'State')}
      {text('postcode', 'ZIP or postcode')}
      {text('permit', 'Permit number')}
      {text('program', 'Program number')}
      {text('builder', 'Builder or contractor', true)}
      <SizeFields
        building={building}
        length={units.length}
        found={useFound()}
        offer={everything}
        onBuilding={editBuilding}
      />
    </div>
  )
}
