import { PageIcon } from '../page-icons.tsx'
import { IntervalDrawing } from './interval-drawing.tsx'
import { say } from '../../words/say.ts'

export interface VerdictProps {
  /** What it is the verdict of, where it is not the one test that is open. */
  title?: string
  /** `2.86` */
  value: string
  margin: string
  /** `ACH50` or a unit. */
  unit: string
  /** Unrounded, for the drawing. */
  interval?: { value: number; low: number; high: number; limit?: number | undefined; mark?: string } | undefined
  /** The interval in words, for those who do not see the drawing. */
  drawn: string
  /** The verdict, when there is a limit: `Meets the limit, 3.0`. */
  verdict?: { meets: boolean; text: string } | undefined
  /** Why there is no verdict: the limit chosen is not for the test. */
  withheld?: string
  /** How likely, then where the interval reaches. */
  likely: string
  reach: string
  /** Which part of the uncertainty is the largest. */
  mostly: string
  /** Further sentences: what rounding does, what is applied. */
  notes: readonly string[]
  /** The clause, and whose edition counts. */
  source: string
  /** Goes to the choice of a limit; used while there is none. */
  onLimit?: () => void
}

/** The code's verdict first, then how likely, then where the interval reaches, then the clause. */
export function VerdictBlock({
  title,
  value,
  margin,
  unit,
  interval,
  drawn,
  verdict,
  likely,
  reach,
  mostly,
  notes,
  source,
  onLimit,
}: VerdictProps) {
  return (
    <section class="ver" part="verdict" aria-label={title ?? say`Verdict`}>
      {title && <h3>{title}</h3>}
      <div class="l1">
        <span class="y">{value}</span>
        <span class="u">
          {margin && `${margin.startsWith('−') ? '' : '± '}${margin} `}
          {unit}
        </span>
        {verdict && (
          <span class={verdict.meets ? 'say' : 'say not'}>
            <PageIcon name={verdict.meets ? 'good' : 'bad'} />
            {verdict.text}
          </span>
        )}
      </div>
      {interval && <IntervalDrawing {...interval} label={drawn} />}
      {(likely || reach || mostly) && (
        <p>
          {likely && <b>{likely}</b>} {mostly} {reach}
        </p>
      )}
      {notes.map((note) => (
        <p key={note} class="flip">
          {note}
        </p>
      ))}
      {source && (
        <p class="src">
          {source}{' '}
          {!verdict && onLimit && (
            <button type="button" class="link" onClick={onLimit}>
              {say`Choose a limit`}
            </button>
          )}
        </p>
      )}
    </section>
  )
}
