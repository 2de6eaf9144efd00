import { useState } from 'preact/hooks'
import { listLimits } from '../../book/limits.ts'
import { keptLimitsFor, takeLimit, takenLimit } from '../../job/kept-limit.ts'
import { useLive } from '../parts/use-live.ts'
import { type KeptOptions, LimitChoice } from './limit-choice.tsx'
import { everything, type Offer } from './sheet-fields.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'

const onlyLimit: Offer = { shows: (field) => field === 'limit', fixed: () => false }

/** Before the id of a kept limit in the list. */
const ofKept = 'kept:'

/** The limit of the open test: a published one, one that is kept in the book, or one that is typed. `inline`: beside the verdict. */
export function LimitField({ inline = false }: { inline?: boolean }) {
  const { job } = useDeskContext()
  const { test, editTest } = useBench()
  const limits = useLive(listLimits, ['limits']).value ?? []
  const fitting = keptLimitsFor(job, test, limits)
  const taken = takenLimit(test, fitting)
  const kept: KeptOptions = {
    options: fitting.map(({ id, name, set }) => [ofKept + id, set ? `${set}: ${name}` : name]),
    taken: taken && ofKept + taken.id,
    take: (picked) => {
      const chosen = fitting.find(({ id }) => ofKept + id === picked)
      return chosen && takeLimit(chosen)
    },
  }
  return (
    <LimitChoice
      job={job}
      test={test}
      found={useFound()}
      offer={inline ? onlyLimit : everything}
      {...(!inline && { listId: 'limit' })}
      kept={kept}
      onTest={editTest}
    />
  )
}

/**
 * The list of limits beside a verdict that has none. It stays while it has the focus: the arrow keys choose one limit
 * after the other, and each may give a verdict.
 */
export function LimitBeside({ judged }: { judged: boolean }) {
  const [held, setHeld] = useState(false)
  if (judged && !held) return null
  return (
    <div onFocusIn={() => setHeld(true)} onFocusOut={() => setHeld(false)}>
      <LimitField inline />
    </div>
  )
}
