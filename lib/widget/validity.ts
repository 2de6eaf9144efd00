/** Whether the inputs will do, as a control of a form says it. */
import { say } from '../words/say.ts'
import type { Computed } from './compute.ts'
import type { Options } from './types.ts'

interface Asked extends Pick<Options, 'names' | 'figures'> {
  required: boolean
  /** A reason of the page's own; empty: none. */
  custom: string
}

/** Flags of a ValidityState, all false where nothing stands in the way, and the sentence that goes with them. */
export function validityOf({ problems, report, reading }: Computed, { names, figures, required, custom }: Asked) {
  const bad = problems.find(({ severity }) => severity === 'bad')
  const wanted = Object.keys(names).length > 0 ? Object.keys(names) : figures
  const missing = required && (!report || wanted.some((id) => report.figures[id] === undefined))
  const lack = problems.find(({ severity }) => severity === 'missing')?.message ?? reading.lacking[0] ?? reading.waiting
  return {
    flags: { customError: custom !== '', badInput: bad !== undefined, valueMissing: missing },
    message: custom || bad?.message || (missing && lack) || say`Check what was typed.`,
  }
}
