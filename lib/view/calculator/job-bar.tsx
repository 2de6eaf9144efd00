import { Icon } from '../icons.tsx'

interface Props {
  name: string
  number: string
  open: boolean
  onToggle: () => void
}

/** The job in hand. Opens the jobs, the building and the tester. */
export function JobBar({ name, number, open, onToggle }: Props) {
  return (
    <div class="job">
      <Icon name="mark" />
      <h1>
        <button
          type="button"
          class="who"
          aria-expanded={open}
          aria-label={`Job: ${name}. Change job`}
          onClick={onToggle}
        >
          <b>{name}</b>
          <Icon name="tw" class={open ? 'tw down' : 'tw'} />
        </button>
      </h1>
      {number && <span class="q number">{number}</span>}
    </div>
  )
}
