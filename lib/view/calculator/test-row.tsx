import type { Job } from '../../job/schema.ts'
import { roleWords } from '../../words/names.ts'
import { say } from '../../words/say.ts'

interface Props {
  job: Job
  open: string
  editing: boolean
  adding: boolean
  kept: string
  onOpen: (id: string) => void
  onEdit: () => void
  onAdd: () => void
  /** Begins the next house with the same set-up; left out while nothing was read in this one. */
  onNext?: () => void
}

/** The tests of a job. The open one, pressed again, shows its role to rename or delete. */
export function TestRow({ job, open, editing, adding, kept, onOpen, onEdit, onAdd, onNext }: Props) {
  return (
    <nav class="tests" aria-label={say`Tests of this job`}>
      {job.tests.map((test) =>
        test.id === open ? (
          <button
            key={test.id}
            type="button"
            aria-current="true"
            aria-expanded={editing}
            title={say`Rename or delete this test`}
            onClick={onEdit}
          >
            {roleWords(test.role) || say`no role`}
          </button>
        ) : (
          <button key={test.id} type="button" onClick={() => onOpen(test.id)}>
            {roleWords(test.role) || say`no role`}
          </button>
        ),
      )}
      <button type="button" aria-expanded={adding} aria-label={say`Add a test`} onClick={onAdd}>
        {say`+ test`}
      </button>
      {onNext && (
        <button
          type="button"
          aria-label={say`Next house, same set-up`}
          title={say`Next house, same set-up: limit, procedure, stage and device stay; readings, address and notes are empty`}
          onClick={onNext}
        >
          {say`+ house`}
        </button>
      )}
      <span class="kept" role="status">
        {kept && say`kept ${kept}`}
      </span>
    </nav>
  )
}
