import { Cautions } from './cautions.tsx'
import { say } from '../../words/say.ts'

/** What to see to, beside the empty cells of a job in which nothing was read yet. It scrolls in itself where it is long. */
export function BeforeReading({ ducts }: { ducts: boolean }) {
  return (
    <section class="care" aria-label={say`Before the first reading`}>
      <h2>{say`Before the first reading`}</h2>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls is to be reached by keys */}
      <div class="care-list" tabIndex={0} role="group" aria-label={say`Cautions before a test`}>
        <Cautions ducts={ducts} />
      </div>
    </section>
  )
}
