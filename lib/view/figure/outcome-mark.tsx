import { PageIcon } from '../parts/page-icons.tsx'
import type { CheckOutcome } from '../../results/shown.ts'

export const outcomeShape = {
  good: 'good',
  doubtful: 'doubtful',
  bad: 'bad',
  'not checked': 'none',
} as const satisfies Record<CheckOutcome, string>

/** An outcome as a shape and words. */
export function OutcomeMark({ outcome, words }: { outcome: CheckOutcome; words: string }) {
  const shape = outcomeShape[outcome]
  return (
    <span class={`st ${shape}`}>
      <PageIcon name={shape} /> {words}
    </span>
  )
}
