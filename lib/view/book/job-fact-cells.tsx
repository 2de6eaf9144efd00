import { PageIcon } from '../parts/page-icons.tsx'
import type { JobFacts } from './job-facts.ts'
import { hashOf } from './route.ts'
import { StatusWords } from './status-words.tsx'
import { say } from '../../words/say.ts'

const verdicts = {
  meets: { words: say`meets`, icon: 'good', tone: 'x' },
  'does not meet': { words: say`does not meet`, icon: 'bad', tone: 'bad' },
  withheld: { words: say`no verdict`, icon: 'none', tone: 'x' },
} as const

/** Figures, verdicts and status of a job; undefined while they are worked out. Each figure has its verdict beside it. */
export function JobFactCells({ facts }: { facts: JobFacts | undefined }) {
  const figures = facts?.figures ?? []
  const { number, book } = facts?.entry ?? {}
  return (
    <>
      <td aria-busy={facts === undefined} class="fig">
        {figures.map(({ figure, test }) => (
          <div key={test}>
            {figure} <small class="q">{test}</small>
          </div>
        ))}
      </td>
      <td>
        {figures.map(({ test, verdict }) => (
          <div key={test}>
            {verdict && (
              <span class={`st ${verdicts[verdict].tone}`}>
                <PageIcon name={verdicts[verdict].icon} />
                <span>
                  {verdicts[verdict].words}
                  <span class="vh">{say`, ${test}`}</span>
                </span>
              </span>
            )}
          </div>
        ))}
      </td>
      <td>
        {facts?.status && <StatusWords of={facts.status} />}{' '}
        {number !== undefined && (
          <a href={hashOf({ section: 'entries', entry: number, ...(book && { book }) })}>
            <small>{say`entry ${number}`}</small>
          </a>
        )}
      </td>
    </>
  )
}
