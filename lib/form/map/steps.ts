/** Forms in several steps: a map spans them all, a page shows one at a time. */
import type { Found } from './find.ts'
import type { Binding } from '../schema.ts'

export interface Steps {
  /** Place of the step that the page shows, from 1. */
  at: number
  of: number
  /** Bindings of this step, and of all. */
  here: number
  all: number
}

const stepOf = ({ step }: Binding): number => step ?? 1

/** The steps of a map, in order. */
export function stepsOf(bindings: readonly Binding[]): number[] {
  return [...new Set(bindings.map(stepOf))].toSorted((a, b) => a - b)
}

/** The step of which the page shows the largest share; the first when it shows none. */
export function shownStep(bindings: readonly Binding[], seen: ReadonlySet<string>): number {
  const share = (step: number) => {
    const own = bindings.filter((binding) => stepOf(binding) === step)
    return own.filter(({ id }) => seen.has(id)).length / own.length
  }
  const [best] = stepsOf(bindings).toSorted((a, b) => share(b) - share(a) || a - b)
  return best ?? 1
}

/** The bindings whose controls the page shows now or should show now; the others wait for their own step. */
export function bindingsHere(
  bindings: readonly Binding[],
  answers: ReadonlyMap<string, Found>,
): { here: Binding[]; steps: Steps | undefined } {
  const order = stepsOf(bindings)
  if (order.length < 2) return { here: [...bindings], steps: undefined }
  const seen = new Set(
    bindings.flatMap(({ id }) => {
      const found = answers.get(id)
      return found && !('notFound' in found) ? [id] : []
    }),
  )
  const now = shownStep(bindings, seen)
  const here = bindings.filter((binding) => stepOf(binding) === now)
  return { here, steps: { at: order.indexOf(now) + 1, of: order.length, here: here.length, all: bindings.length } }
}

/** The step of a control that is bound now: the one the page shows, or a new one when it shows nothing bound so far. */
export function stepFor(bindings: readonly Binding[], seen: ReadonlySet<string>): number {
  if (bindings.length === 0) return 1
  return seen.size > 0 ? shownStep(bindings, seen) : Math.max(...stepsOf(bindings)) + 1
}

/** The binding with its step noted; the first needs no note. */
export function atStep(binding: Binding, step: number): Binding {
  return step > 1 ? { ...binding, step } : binding
}
