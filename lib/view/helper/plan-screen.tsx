import { useMemo, useState } from 'preact/hooks'
import type { Material } from '../../form/material.ts'
import { plan as planOf, pick, type Plan } from '../../form/plan.ts'
import type { FormMap } from '../../form/schema.ts'
import { useFill, type Filled } from './use-fill.ts'
import { undoPlan } from '../../form/undo.ts'
import { Filling } from './filling.tsx'
import { PlanView } from './plan-view.tsx'
import { Receipt } from './receipt.tsx'

interface PlanScreenProps {
  material: Material
  map: FormMap
  onMap: () => void
}

type Choices = ReadonlyMap<string, number>

/** The plan as it is now, with the person's answers to "which of these". */
function planned(map: FormMap, material: Material, choices: Choices): Plan {
  let plan = planOf(map, material, document)
  for (const [binding, index] of choices) {
    const control = plan.candidates.get(binding)?.[index]
    if (control) plan = pick(plan, binding, control, material)
  }
  return plan
}

/** From the plan to the receipt, and back again by an undo, which is planned and shown like any fill. */
export function PlanScreen({ material, map, onMap }: PlanScreenProps) {
  const [undoing, setUndoing] = useState<Filled>()
  const [last, setLast] = useState<Filled>()
  const [choices, setChoices] = useState<Choices>(new Map())
  const { state, start, stop } = useFill({ material, map })

  const compute = useMemo(() => {
    if (undoing) return () => undoPlan(undoing.lines, undoing.plan)
    return () => planned(map, material, choices)
  }, [undoing, map, material, choices])

  const run = async (plan: Plan, chosen: ReadonlySet<string>) => {
    const filled = await start({ plan, chosen, ...(undoing && { of: undoing.id }) })
    if (filled) setLast(filled)
  }

  if (state.at === 'filling')
    return <Filling lines={state.lines} total={state.total} stopped={state.stopping} onStop={stop} />
  if (last) {
    return (
      <Receipt
        filled={last}
        onUndo={
          last.kind === 'fill'
            ? () => {
                setUndoing(last)
                setLast(undefined)
              }
            : undefined
        }
        stepNow={() => planned(map, material, choices).steps}
        onStep={
          last.kind === 'fill'
            ? () => {
                setChoices(new Map())
                setLast(undefined)
              }
            : undefined
        }
        onAgain={() => {
          setUndoing(undefined)
          setLast(undefined)
        }}
      />
    )
  }
  return (
    <PlanView
      key={undoing ? 'undo' : 'fill'}
      compute={compute}
      undo={undoing !== undefined}
      job={material.job.name}
      noting={state.at === 'noting'}
      problem={state.at === 'problem' ? state.message : ''}
      onChoose={(binding, index) => setChoices((before) => new Map(before).set(binding, index))}
      onFill={run}
      onMap={onMap}
    />
  )
}
