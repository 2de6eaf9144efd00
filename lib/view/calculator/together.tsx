import { useEffect, useState } from 'preact/hooks'
import { together } from '../../job/together.ts'
import { CheckList } from '../figure/check-list.tsx'
import { FigureTable } from '../figure/figure-table.tsx'
import { BarsDrawing } from '../plot/bars-drawing.tsx'
import '../plot/plot.css'
import { Section } from './section.tsx'
import { togetherWords, type TogetherWords } from './together-lines.ts'
import { useDeskContext } from './use-context.ts'
import { say } from '../../words/say.ts'

/** All tests are computed again only when typing rests. */
const rest = 300

/** What the tests of the job say together; nothing while none belong together. */
export function Together() {
  const { job, devices } = useDeskContext()
  const [last, setLast] = useState<{ job: string; words: TogetherWords | undefined }>()
  useEffect(() => {
    const work = () => setLast({ job: job.id, words: togetherWords(together(job, [...devices])) })
    const timer = setTimeout(work, last?.job === job.id ? rest : 0)
    return () => clearTimeout(timer)
  }, [job, devices])
  if (last?.job !== job.id || !last.words) return null
  const { summary, groups, checks, bars } = last.words
  return (
    <Section id="together" title={say`Tests together`} summary={summary}>
      {bars && <BarsDrawing bars={bars} />}
      <FigureTable groups={groups} />
      {checks.length > 0 && <CheckList checks={checks} />}
    </Section>
  )
}
