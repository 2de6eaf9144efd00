import { switchTestUnits, switchUnits, unitSets } from '../../job/units.ts'
import type { TypedUnits } from '../../job/schema.ts'
import { Choice } from './choice.tsx'
import { editTest } from './edits.ts'
import { flowWords } from './unit-words.ts'
import { useBench, useDeskContext } from './use-context.ts'

const sets = [
  ['IP', 'feet and °F'],
  ['SI', 'metres and °C'],
] as const
const flows = Object.entries(flowWords) as [TypedUnits['flow'], string][]

/** The units of what is typed. A switch rewrites the cells; switching back restores what was typed. */
export function UnitFields() {
  const { editJob } = useDeskContext()
  const { test } = useBench()
  const { units } = test
  return (
    <>
      <Choice
        label="Units of the job"
        value={units.length === 'ft' ? 'IP' : 'SI'}
        options={sets}
        onPick={(set) => editJob((job) => switchUnits(job, unitSets[set]))}
      />
      <Choice
        label="Flow in"
        value={units.flow}
        options={flows}
        onPick={(flow) =>
          editJob((job) => editTest(job, test.id, (now) => switchTestUnits(now, { ...now.units, flow })))
        }
      />
    </>
  )
}
