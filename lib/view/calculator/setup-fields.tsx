import { useState } from 'preact/hooks'
import { asSubject } from '../../job/next-test.ts'
import type { Job, Test } from '../../job/schema.ts'
import { DeviceField } from './device-field.tsx'
import { isBlank } from '../../job/edits.ts'
import { Fold } from './fold.tsx'
import { KnownHoleFields } from './known-hole-fields.tsx'
import { later } from './later.tsx'
import { LimitField } from './limit-field.tsx'
import { everything, SheetFields } from './sheet-fields.tsx'
import { UnitFields } from './unit-fields.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'
import { Cautions } from './cautions.tsx'
import { say } from '../../words/say.ts'

const FanFields = later(async () => (await import('./fan-fields.tsx')).FanFields)
const ZoneFields = later(async () => (await import('./zone-fields.tsx')).ZoneFields)

/** Whether no other test of the job was begun that draws air out of the house. */
const firstOfJob = (job: Job, test: Test): boolean =>
  !job.tests.some(
    ({ id, sheet }) => id !== test.id && sheet.direction === 'depressurize' && !sheet.points.every(isBlank),
  )

/** Everything about a test that is not a reading. */
export function SetupFields() {
  const { job, editBuilding } = useDeskContext()
  const { test, editTest, editSheet } = useBench()
  // Depressurize was chosen just now, for the first time in this job.
  const [drawing, setDrawing] = useState(false)
  const several = async () => {
    const { asFans } = await import('../../job/fans-edit.ts')
    editSheet(asFans)
  }
  return (
    <div class="fields">
      {!drawing && (
        <details class="wide">
          <summary class="link">{say`Cautions before a test`}</summary>
          <Cautions ducts={test.sheet.subject === 'ducts'} />
        </details>
      )}
      <SheetFields
        test={test}
        elevation={job.building.elevation}
        length={job.units.length}
        found={useFound()}
        offer={everything}
        onTest={editTest}
        care={drawing && <Cautions ducts={test.sheet.subject === 'ducts'} />}
        onSheet={(patch) => {
          if (patch.direction) setDrawing(patch.direction === 'depressurize' && firstOfJob(job, test))
          if (patch.subject) editTest(asSubject(job, test, patch.subject))
          else if (patch.reading === 'fans') void several()
          else editSheet(patch)
        }}
        onBuilding={editBuilding}
        limit={<LimitField />}
        fans
        device={test.sheet.reading === 'fans' ? <FanFields /> : <DeviceField />}
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
    </div>
  )
}
