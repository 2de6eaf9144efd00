import { PageIcon } from '../parts/page-icons.tsx'
import { IntervalDrawing } from './interval-drawing.tsx'
import type { VerdictProps } from '../../results/shown.ts'
import { say } from '../../words/say.ts'

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
