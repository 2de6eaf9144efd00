import { together } from '../../job/together.ts'
import { CheckList } from '../figure/check-list.tsx'
import { FigureTable } from '../figure/figure-table.tsx'
import { VerdictBlock } from '../figure/verdict-block.tsx'
import { BarsDrawing } from '../plot/bars-drawing.tsx'
import '../plot/plot.css'
import { Section } from './section.tsx'
import { togetherWords } from '../../results/together-lines.ts'
import { useDeskContext } from './use-context.ts'
import { useRested } from './use-rested.ts'
import { say } from '../../words/say.ts'

/** What the tests of the job say together; nothing while none belong together. */
export function Together() {
  const { job, devices } = useDeskContext()
  const words = useRested(job.id, () => togetherWords(together(job, [...devices])), [job, devices])
  if (!words) return null
  const { summary, groups, verdicts, checks, bars } = words
  return (
    <Section id="together" title={say`Tests together`} summary={summary}>
      {bars.map((one) => (
        <BarsDrawing key={one.words} bars={one} />
      ))}
      {verdicts.map((verdict) => (
        <VerdictBlock key={verdict.title} {...verdict} />
      ))}
      <FigureTable groups={groups} />
      {checks.length > 0 && <CheckList checks={checks} />}
    </Section>
  )
}
