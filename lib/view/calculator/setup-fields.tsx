import { DeviceField } from './device-field.tsx'
import { Fold } from './fold.tsx'
import { KnownHoleFields } from './known-hole-fields.tsx'
import { later } from './later.tsx'
import { LimitField } from './limit-field.tsx'
import { everything, SheetFields } from './sheet-fields.tsx'
import { UnitFields } from './unit-fields.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'
import { Cautions } from './cautions.tsx'
import { say } from '../../words/say.ts'

const ZoneFields = later(async () => (await import('./zone-fields.tsx')).ZoneFields)

/** Everything about a test that is not a reading. */
export function SetupFields() {
  const { job, editBuilding } = useDeskContext()
  const { test, editTest, editSheet } = useBench()
  return (
    <div class="fields">
      <SheetFields
        test={test}
        elevation={job.building.elevation}
        length={job.units.length}
        found={useFound()}
        offer={everything}
        onTest={editTest}
        onSheet={editSheet}
        onBuilding={editBuilding}
        limit={<LimitField />}
        device={<DeviceField />}
      />
      <Fold title={say`Field check with a known hole`} start={test.sheet.fieldCheck !== undefined}>
        <KnownHoleFields />
      </Fold>
      {test.sheet.subject === 'enclosure' && (
        <Fold title={say`Attic or garage: pressures of a zone`} start={test.zones !== undefined}>
          <ZoneFields />
        </Fold>
      )}
      <UnitFields />
      <div class="fd-f wide">
        <label for="notes">{say`Notes`}</label>
        <textarea
          id="notes"
          class="in words"
          rows={2}
          maxLength={10_000}
          value={test.notes}
          onInput={(event) => editTest({ notes: event.currentTarget.value })}
        />
      </div>
      <details class="wide">
        <summary class="link">{say`Cautions before a test`}</summary>
        <Cautions />
      </details>
    </div>
  )
}
