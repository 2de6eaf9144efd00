import { listLimits } from '../../book/limits.ts'
import { keptLimitsFor } from '../../job/kept-limit.ts'
import { useLive } from '../book/use-live.ts'
import { LimitChoice } from './limit-choice.tsx'
import { everything } from './sheet-fields.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'

/** The limit of the open test: a published one, one that is kept in the book, or one that is typed. */
export function LimitField() {
  const { job } = useDeskContext()
  const { test, editTest } = useBench()
  const limits = useLive(listLimits, ['limits']).value ?? []
  return (
    <LimitChoice
      job={job}
      test={test}
      found={useFound()}
      offer={everything}
      kept={keptLimitsFor(job, test, limits)}
      onTest={editTest}
    />
  )
}
