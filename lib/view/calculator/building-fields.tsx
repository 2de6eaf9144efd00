import type { Building } from '../../job/schema.ts'
import { Field } from './field.tsx'
import { everything } from './sheet-fields.tsx'
import { SizeFields } from './size-fields.tsx'
import { useDeskContext, useFound } from './use-context.ts'
import { say } from '../../words/say.ts'

/** Where the building stands and how large it is. */
export function BuildingFields() {
  const { job, editBuilding } = useDeskContext()
  const { building, units } = job
  const text = (key: keyof Building, label: string, wide = false) => (
    <Field label={label} wide={wide} value={building[key] ?? ''} onInput={(value) => editBuilding({ [key]: value })} />
  )
  return (
    <div class="fields">
      {text('street', say`Street address`, true)}
      {text('unit', say`Unit or lot`)}
      {text('town', say`Town`)}
      {text('state', say`State`)}
      {text('postcode', say`ZIP or postcode`)}
      {text('permit', say`Permit number`)}
      {text('program', say`Program number`)}
      {text('builder', say`Builder or contractor`, true)}
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
