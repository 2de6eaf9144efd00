import { switchTestUnits, switchUnits, unitSets } from '../../job/units.ts'
import type { TypedUnits } from '../../job/schema.ts'
import { Choice } from './choice.tsx'
import { editTest } from '../../job/edits.ts'
import { flowWords } from '../../results/unit-words.ts'
import { useBench, useDeskContext } from './use-context.ts'
import { say } from '../../words/say.ts'

const sets = [
  ['IP', say`feet and °F`],
  ['SI', say`metres and °C`],
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
        label={say`Units of the job`}
        value={units.length === 'ft' ? 'IP' : 'SI'}
        options={sets}
        onPick={(set) => editJob((job) => switchUnits(job, unitSets[set]))}
      />
      <Choice
        label={say`Flow in`}
        value={units.flow}
        options={flows}
        onPick={(flow) =>
          editJob((job) => editTest(job, test.id, (now) => switchTestUnits(now, { ...now.units, flow })))
        }
      />
    </>
  )
}
