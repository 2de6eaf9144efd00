import type { Status } from '../../book/schema.ts'
import { Icon, type IconName } from '../icons.tsx'

export const statusWords: Record<Status, string> = {
  draft: 'draft',
  entered: 'entered, not submitted',
  submitted: 'submitted',
  accepted: 'accepted',
  rejected: 'rejected',
  resubmitted: 'resubmitted',
}

const shapes: Record<Status, { icon: IconName; tone: string }> = {
  draft: { icon: 'none', tone: 'x' },
  entered: { icon: 'entered', tone: 'x' },
  submitted: { icon: 'none', tone: 'x' },
  accepted: { icon: 'good', tone: 'x' },
  rejected: { icon: 'refused', tone: 'refused' },
  resubmitted: { icon: 'tick', tone: 'x' },
}

/** What became of a submission, as a shape and words. */
export function StatusWords({ of }: { of: Status }) {
  const { icon, tone } = shapes[of]
  return (
    <span class={`st ${tone}`}>
      <Icon name={icon} />
      <span>{of}</span>
    </span>
  )
}
