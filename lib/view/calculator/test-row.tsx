import type { Job } from '../../job/schema.ts'

interface Props {
  job: Job
  open: string
  editing: boolean
  adding: boolean
  kept: string
  onOpen: (id: string) => void
  onEdit: () => void
  onAdd: () => void
}

/** The tests of a job. The open one, pressed again, shows its role to rename or delete. */
export function TestRow({ job, open, editing, adding, kept, onOpen, onEdit, onAdd }: Props) {
  return (
    <nav class="tests" aria-label="Tests of this job">
      {job.tests.map((test) =>
        test.id === open ? (
          <button
            key={test.id}
            type="button"
            aria-current="true"
            aria-expanded={editing}
            title="Rename or delete this test"
            onClick={onEdit}
          >
            {test.role || 'no role'}
          </button>
        ) : (
          <button key={test.id} type="button" onClick={() => onOpen(test.id)}>
            {test.role || 'no role'}
          </button>
        ),
      )}
      <button type="button" aria-expanded={adding} aria-label="Add a test" onClick={onAdd}>
        + test
      </button>
      <span class="kept" role="status">
        {kept && `kept ${kept}`}
      </span>
    </nav>
  )
}
