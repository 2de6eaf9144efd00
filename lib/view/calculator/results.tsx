import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { CheckList } from '../figure/check-list.tsx'
import { FigureTable } from '../figure/figure-table.tsx'
import type { FigureGroup } from '../../results/shown.ts'
import { OutcomeMark } from '../figure/outcome-mark.tsx'
import { VerdictBlock } from '../figure/verdict-block.tsx'
import { Section } from './section.tsx'
import type { Reading } from '../../results/reading.ts'
import { say } from '../../words/say.ts'

interface Props {
  reading: Reading
  /** The choice of a limit, which stands below the verdict. */
  limit?: ComponentChildren
  /** Goes to the choice of a limit; left out where none is offered. */
  onLimit?: () => void
  /** What to see to before the first reading. */
  care?: ComponentChildren
  /** Goes to the sizes of the building. */
  onBuilding?: () => void
  /** Draws the figures; a table of them where it is left out. */
  drawFigures?: (groups: FigureGroup[]) => ComponentChildren
}

/** How long the verdict rests before it is read out, so that typing is not talked over. */
const rest = 1200

/** What the readings come to: verdict, figures, checks. */
export function Results({ reading, care, limit, onLimit, onBuilding, drawFigures }: Props) {
  const { verdict, groups, lacking, checks, counts, basis, factor, waiting } = reading
  const spoken = verdict
    ? [verdict.value, verdict.unit, verdict.verdict?.text ?? verdict.withheld].filter(Boolean).join(' ')
    : ''
  const [said, setSaid] = useState('')
  useEffect(() => {
    const timer = setTimeout(() => setSaid(spoken), rest)
    return () => clearTimeout(timer)
  }, [spoken])

  return (
    <>
      <p class="vh" role="status">
        {said}
      </p>
      {!verdict && care}
      {verdict ? (
        <VerdictBlock {...verdict} {...(onLimit && limit === undefined && { onLimit })} />
      ) : (
        <p class="empty">{waiting}</p>
      )}
      {verdict && limit}
      {groups.length > 0 && (
        <Section id="figures" title={say`Figures`} summary={basis} end={factor}>
          {drawFigures ? drawFigures(groups) : <FigureTable groups={groups} />}
          {lacking.length > 0 && (
            <ul class="lack">
              {lacking.map((line) => (
                <li key={line}>{line}</li>
              ))}
              {onBuilding && (
                <li>
                  <button type="button" class="link" onClick={onBuilding}>
                    {say`Sizes of the building`}
                  </button>
                </li>
              )}
            </ul>
          )}
        </Section>
      )}
      {checks.length > 0 && (
        <Section
          id="checks"
          title={say`Checks`}
          summary={
            <>
              {counts.bad > 0 && <OutcomeMark outcome="bad" words={say`${counts.bad} bad`} />}{' '}
              {counts.doubtful > 0 && <OutcomeMark outcome="doubtful" words={say`${counts.doubtful} doubtful`} />}{' '}
              {counts.good > 0 && <OutcomeMark outcome="good" words={say`${counts.good} good`} />}
            </>
          }
          end={counts.not > 0 && <OutcomeMark outcome="not checked" words={say`${counts.not} not checked`} />}
        >
          <CheckList checks={checks} />
        </Section>
      )}
    </>
  )
}
