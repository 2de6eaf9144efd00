import { Icon, type IconName } from '../parts/icons.tsx'
import type { Outcome, PlanLine } from '../../form/schema.ts'
import { say, shown } from '../../words/say.ts'

const shapes = {
  'to enter': { icon: 'ready', look: 'x' },
  'will replace': { icon: 'replaces', look: 'x' },
  'already there': { icon: 'same', look: 'x' },
  entered: { icon: 'entered', look: 'x' },
  differs: { icon: 'differs', look: 'differs' },
  'not found': { icon: 'notfound', look: 'doubt' },
  refused: { icon: 'refused', look: 'refused' },
  ambiguous: { icon: 'ambiguous', look: 'ambiguous' },
} satisfies Record<PlanLine['state'] | Outcome, { icon: IconName; look: string }>

/** A state of a plan line or an outcome: a shape and a word. */
export function Status({ of, count }: { of: PlanLine['state'] | Outcome; count?: number }) {
  const { icon, look } = shapes[of]
  return (
    <span class={`st ${look}`}>
      <Icon name={icon} />
      <span>{count === undefined ? shown(of) : say`${count} ${shown(of)}`}</span>
    </span>
  )
}

/** How many lines are in which state, in a fixed order; states with none are left out. */
export function Counts({ of }: { of: readonly (PlanLine['state'] | Outcome)[] }) {
  const states = Object.keys(shapes) as (keyof typeof shapes)[]
  return (
    <div class="say">
      {states.map((state) => {
        const count = of.filter((each) => each === state).length
        return count > 0 ? <Status key={state} of={state} count={count} /> : null
      })}
    </div>
  )
}
