import type { Outcome } from '../../form/schema.ts'
import { PageIcon, type PageIconName } from '../parts/page-icons.tsx'
import { shown } from '../../words/say.ts'

export type Shown = Outcome | 'not reached'

const shapes: Record<Shown, { icon: PageIconName; tone: string }> = {
  entered: { icon: 'entered', tone: 'x' },
  differs: { icon: 'differs', tone: 'differs' },
  'not found': { icon: 'notfound', tone: 'doubt' },
  refused: { icon: 'refused', tone: 'refused' },
  ambiguous: { icon: 'ambiguous', tone: 'ambiguous' },
  'not reached': { icon: 'none', tone: 'doubt' },
}

/** An outcome as a shape and words. */
export function OutcomeWords({ of, words = shown(of) }: { of: Shown; words?: string }) {
  const { icon, tone } = shapes[of]
  return (
    <span class={`st ${tone}`}>
      <PageIcon name={icon} />
      <span>{words}</span>
    </span>
  )
}

/** The ground of a row that wants a look. */
export function ground(of: Shown): string {
  if (of === 'entered') return ''
  return of === 'refused' ? 'hb' : 'hi'
}
