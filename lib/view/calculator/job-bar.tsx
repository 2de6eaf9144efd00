import { say } from '../../words/say.ts'
import { PageIcon } from '../page-icons.tsx'

interface Props {
  name: string
  number: string
  open: boolean
  onToggle: () => void
  /** Opens the sidebar; left out where one stands already. */
  onBeside?: () => void
}

/** The job in hand. Opens the jobs, the building and the tester. */
export function JobBar({ name, number, open, onToggle, onBeside }: Props) {
  return (
    <div class="job">
      <PageIcon name="mark" />
      <h1>
        <button
          type="button"
          class="who"
          aria-expanded={open}
          aria-label={say`Job: ${name}. Change job`}
          onClick={onToggle}
        >
          <b>{name}</b>
          <PageIcon name="tw" class={open ? 'tw down' : 'tw'} />
        </button>
      </h1>
      {number && <span class="q number">{number}</span>}
      {onBeside && (
        <button
          type="button"
          class="ib"
          aria-label={say`Keep beside the page`}
          title={say`Keep beside the page`}
          onClick={onBeside}
        >
          <PageIcon name="beside" />
        </button>
      )}
    </div>
  )
}
