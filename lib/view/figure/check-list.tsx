import { PageIcon } from '../parts/page-icons.tsx'
import { outcomeShape } from './outcome-mark.tsx'
import type { CheckLine } from '../../results/shown.ts'
import { say, shown } from '../../words/say.ts'

/** The checks with their outcomes, each a shape and a word. */
export function CheckList({ checks }: { checks: readonly CheckLine[] }) {
  return (
    <ul class="ck">
      {checks.map((check) => (
        <li key={check.id} class={outcomeShape[check.outcome]}>
          <PageIcon name={outcomeShape[check.outcome]} />
          <span>
            <b>{shown(check.outcome)}</b> {check.text}
          </span>
          <span class="fd">{check.found}</span>
          {check.expected && <span class="why">{say`expected ${check.expected}`}</span>}
        </li>
      ))}
    </ul>
  )
}
