import { LimitChoice } from './limit-choice.tsx'
import { everything } from './sheet-fields.tsx'
import { useBench, useDeskContext, useFound } from './use-context.ts'

/** The limit of the open test. */
export function LimitField() {
  const { job } = useDeskContext()
  const { test, editTest } = useBench()
  return <LimitChoice job={job} test={test} found={useFound()} offer={everything} onTest={editTest} />
}
