import type { Status } from '../../book/schema.ts'
import { PageIcon, type PageIconName } from '../parts/page-icons.tsx'
import { say, shown } from '../../words/say.ts'

export const statusWords: Record<Status, string> = {
  draft: say`draft`,
  entered: say`entered, not submitted`,
  submitted: say`submitted`,
  accepted: say`accepted`,
  rejected: say`rejected`,
  resubmitted: say`resubmitted`,
}

const shapes: Record<Status, { icon: PageIconName; tone: string }> = {
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
      <PageIcon name={icon} />
      <span>{shown(of)}</span>
    </span>
  )
}
