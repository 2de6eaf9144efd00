import { ShortCautions } from './cautions.tsx'
import { say } from '../../words/say.ts'

/** What to see to, all of it in sight beside the empty cells of a job in which nothing was read yet. */
export function BeforeReading({ ducts }: { ducts: boolean }) {
  return (
    <section class="care" aria-label={say`Before the first reading`}>
      <h2>{say`Before the first reading`}</h2>
      <ShortCautions ducts={ducts} />
    </section>
  )
}
