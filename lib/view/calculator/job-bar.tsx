import { say } from '../../words/say.ts'
import { PageIcon } from '../parts/page-icons.tsx'

interface Props {
  name: string
  number: string
  /** When it was kept last, or empty. */
  kept: string
  open: boolean
  onToggle: () => void
  /** Begins the next house with the same set-up; left out while nothing was read in this one. */
  onNext?: () => void
  /** Opens the sidebar; left out where one stands already. */
  onBeside?: () => void
}

/** When the job was kept last. */
export function Kept({ at }: { at: string }) {
  return (
    <span class="q kept" role="status">
      {at && say`kept ${at}`}
    </span>
  )
}

/** The job in hand. Opens the jobs, the building and the tester. */
export function JobBar({ name, number, kept, open, onToggle, onNext, onBeside }: Props) {
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
          <b title={name}>{name}</b>
          <PageIcon name="tw" class={open ? 'tw down' : 'tw'} />
        </button>
      </h1>
      {onNext && (
        <button
          type="button"
          class="link next"
          aria-label={say`Next house, same set-up`}
          title={say`Next house, same set-up: limit, procedure, stage and device stay; readings, address and notes are empty`}
          onClick={onNext}
        >
          {say`+ house`}
        </button>
      )}
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
      {number && (
        <p class="q under">
          {number}
          <Kept at={kept} />
        </p>
      )}
    </div>
  )
}
