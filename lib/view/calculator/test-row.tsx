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
}

/** The tests of a job. The open one, pressed again, shows its role to rename or delete. */
export function TestRow({ job, open, editing, adding, kept, onOpen, onEdit, onAdd }: Props) {
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
      <span class="kept" role="status">
        {kept && say`kept ${kept}`}
      </span>
    </nav>
  )
}
